import type { LadderBlock } from '../../plan/plan.ts';
import { limits } from '../limits.ts';
import { type Match, phrase, sign, wholeNumber } from '../matches.ts';
import type { Token } from '../tokens-of.ts';
import { type BlockReading, clauseOf, onlyThese, tell, within, wordSpan } from './block-reading.ts';
import { clausesOf, spanOf } from './clauses.ts';
import { secondsSaid, sharedFacts } from './read-timed-lines.ts';
import { rungsBetween } from './rungs-between.ts';

/** `ladder 10 to 1`, `2 to 10 step 2`, `1 to 10 to 1`, `21 15 9`, each with `in 6:00` where given. */
export function readLadderLine(reading: BlockReading): LadderBlock | undefined {
  const from = [',', ':'].reduce((at, text) => sign(reading.tokens, at, text)?.next ?? at, reading.at);
  const rungs = rungsAt(reading.tokens, from);
  if (rungs === undefined) {
    return tell(reading, wordSpan(reading), {
      code: 'number-needed',
      block: 'ladder',
      works: 'ladder 10 to 1',
    });
  }
  const clauses = clausesOf(reading.tokens, rungs.next, 'seconds');
  onlyThese(
    reading,
    clauses,
    ['name', 'march in the rests', 'in pairs', 'burnout', 'count-in', 'in'],
    'ladder 10 to 1, in 6:00',
  );
  const span = spanOf(reading.tokens, from, rungs.next);
  within(reading, span, 'rungs', rungs.value.length, limits.rounds);
  for (const reps of [Math.min(...rungs.value), Math.max(...rungs.value)]) {
    within(reading, span, 'reps', reps, limits.reps);
  }
  const cap = clauseOf(clauses, 'in');
  const capSeconds = cap && secondsSaid(reading, cap);
  if (cap !== undefined) within(reading, cap.span, 'length', capSeconds ?? 0, limits.lengthSeconds);
  return {
    kind: 'ladder',
    ...sharedFacts(reading, clauses),
    rungs: rungs.value,
    ...(capSeconds === undefined ? {} : { capSeconds }),
  };
}

function rungsAt(tokens: readonly Token[], at: number): Match<readonly number[]> {
  const first = wholeNumber(tokens, at);
  if (first === undefined) return undefined;
  const turns = turnsAt(tokens, first.value, first.next);
  if (turns.value.length === 1) return listAt(tokens, first.value, first.next);
  const step = phrase(tokens, turns.next, 'step') ?? phrase(tokens, turns.next, 'by');
  const size = step && wholeNumber(tokens, step.next);
  return { value: rungsBetween(turns.value, size?.value ?? 1), next: size?.next ?? turns.next };
}

/** The numbers between `to`s: 1, 10, 1. */
function turnsAt(tokens: readonly Token[], first: number, at: number): { value: number[]; next: number } {
  const value = [first];
  let next = at;
  for (;;) {
    const to = phrase(tokens, next, 'to') ?? phrase(tokens, next, 'down to') ?? phrase(tokens, next, 'up to');
    const number = to && wholeNumber(tokens, to.next);
    if (number === undefined) return { value, next };
    value.push(number.value);
    next = number.next;
  }
}

/** `21 15 9`, with spaces, commas or hyphens between; a single number is no ladder. */
function listAt(tokens: readonly Token[], first: number, at: number): Match<readonly number[]> {
  const value = [first];
  let next = at;
  for (;;) {
    const from = sign(tokens, next, ',')?.next ?? sign(tokens, next, '-')?.next ?? next;
    const number = wholeNumber(tokens, from);
    if (number === undefined || value.length > limits.rounds.most) break;
    value.push(number.value);
    next = number.next;
  }
  return value.length > 1 ? { value, next } : undefined;
}
