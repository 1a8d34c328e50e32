import { phrase } from '../matches.ts';
import type { Token } from '../tokens-of.ts';
import { clausesOf } from './clauses.ts';
import { rungsAt } from './rungs-at.ts';

/**
 * A block line that begins without a word of the shorthand, with that word in front: `E2MOM x5` as `every 2 min
 * x5`, `21 15 9` and `for time 21 15 9` as `ladder 21 15 9`. Undefined for any other line.
 */
export function everydayHead(tokens: readonly Token[]): readonly Token[] | undefined {
  return everyMinutes(tokens) ?? ladder(tokens, phrase(tokens, 0, 'for time')?.next ?? 0);
}

/** A number right behind is the minutes of all, as behind `emom`. */
function everyMinutes(tokens: readonly Token[]): readonly Token[] | undefined {
  const [e, minutes, mom, ...others] = tokens;
  if (e?.text !== 'e' || minutes?.kind !== 'number' || mom?.text !== 'mom') return undefined;
  if (!minutes.glued || !mom.glued) return undefined;
  const [next] = others;
  const total = next !== undefined && isLengthAt(others) ? [wordAt(next, 'for')] : [];
  return [wordAt(e, 'every'), minutes, wordAt(mom, 'min'), ...total, ...others];
}

function isLengthAt(tokens: readonly Token[]): boolean {
  return clausesOf(tokens, 0, 'minutes')[0]?.kind === 'length';
}

/** Three numbers or more, or `10 to 1`, and nothing else but what a ladder's line may say. */
function ladder(tokens: readonly Token[], at: number): readonly Token[] | undefined {
  const from = tokens[at]?.text === ',' || tokens[at]?.text === ':' ? at + 1 : at;
  const [first] = tokens;
  const rungs = tokens[from]?.kind === 'number' ? rungsAt(tokens, from) : undefined;
  const isList = tokens
    .slice(from, rungs?.next)
    .every(({ kind, text }) => kind === 'number' || text !== 'to');
  if (first === undefined || rungs === undefined || (isList && rungs.value.length < 3)) return undefined;
  const clauses = clausesOf(tokens, rungs.next, 'seconds');
  const belong = clauses.every(({ kind }) => kind === 'in' || kind === 'name' || kind === 'burnout');
  return belong ? [wordAt(first, 'ladder'), ...tokens.slice(from)] : undefined;
}

function wordAt({ start, end }: Token, text: string): Token {
  return { kind: 'word', text, value: 0, start, end, glued: false };
}
