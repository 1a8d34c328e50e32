import { standingVersions } from '../../domain/plan/undo-target.ts';
import { keepText } from '../../domain/shorthand/keep-text.ts';
import type { Desk } from '../handling.ts';

/**
 * The class with one of its messages put right: where it came as several, the others stay as they were said.
 * Undefined where the message is no part of the class as last written.
 */
export async function textOfEdit(
  desk: Desk,
  planId: string,
  before: string | undefined,
  said: string,
): Promise<string | undefined> {
  const versions = await desk.stores.plans.listVersions(desk.studioId, planId);
  const standing = new Set(standingVersions(versions));
  const written = versions.findLast(
    ({ version, cause }) => standing.has(version) && cause.kind === 'written',
  );
  const was = keepText(before ?? '').trim();
  if (written === undefined || was === '') return undefined;
  const text = keepText(written.text).trim();
  if (text === was) return said;
  const parts = `\n${text}\n`.split(`\n${was}\n`);
  const [above, below] = parts;
  if (above === undefined || below === undefined || parts.length !== 2) return undefined;
  return `${above}\n${said.trim()}\n${below}`.trim();
}
