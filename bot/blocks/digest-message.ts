import type { ClassFacts } from '../../domain/calendar/facts-of-class.ts';
import type { Message } from '../handling.ts';
import type { Words } from '../words/words.ts';
import { context, sections } from './elements.ts';
import { inertText } from './escape.ts';
import { clip, limits } from './limits.ts';

export type DigestLine = {
  readonly facts: ClassFacts;
  readonly cancelled: boolean;
  readonly clashes: readonly string[];
};

/** A day's classes for the team: who, where, and what is still open. */
export function renderDigest(date: string, classes: readonly DigestLine[], words: Words): Message {
  const held = classes.filter(({ cancelled }) => !cancelled).length;
  const lead = words.classes.digestLead(date, held);
  const lines = classes.map(({ facts, cancelled, clashes }) =>
    words.classes.digestLine(facts, cancelled, clashes, inertText),
  );
  return {
    text: clip([lead, ...lines].join('\n'), limits.topLevelText),
    blocks: [
      ...sections('day', [`*${lead}*`, ...lines]).slice(0, limits.messageBlocks - 1),
      context('cause', words.classes.digestCause),
    ],
  };
}
