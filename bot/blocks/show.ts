import type { Catalogue } from '../../domain/catalogue/catalogue.ts';
import type { Settings } from '../../domain/settings.ts';
import type { Words } from '../words/words.ts';

/** What a rendering needs beside the plan. */
export type Show = {
  readonly words: Words;
  readonly catalogue: Catalogue;
  /** Absent where nothing of the studio is said. */
  readonly settings?: Settings;
};
