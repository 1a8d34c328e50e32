import { limits } from '../limits.ts';
import { type Match, phrase, sign, wholeNumber } from '../matches.ts';
import type { Token } from '../tokens-of.ts';
import { rungsBetween } from './rungs-between.ts';

/** `10 to 1`, `2 to 10 step 2`, `21 15 9`: reps rung by rung; a single number is none. */
export function rungsAt(tokens: readonly Token[], at: number): Match<readonly number[]> {
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
