import type { Line } from './lines-of.ts';

/**
 * A word (a run of letters), a number, a clock (`6:00`, with its two parts), or a single sign. `start` and
 * `end` count in the draft; `glued` says that nothing stands between it and the token before.
 */
export type Token = {
  readonly kind: 'word' | 'number' | 'clock' | 'sign';
  readonly text: string;
  readonly value: number;
  readonly start: number;
  readonly end: number;
  readonly glued: boolean;
};

const pattern = /(\d+):([0-5]\d)(?!\d)|(\d+(?:\.\d+)?)|([a-z\p{L}][a-z\p{L}'’]*)|\S/gu;

/** The tokens of a line from `from` (a place in the line), in one pass. */
export function tokensOf(line: Line, from = 0): readonly Token[] {
  let previousEnd = -1;
  return Array.from(line.clean.slice(from).matchAll(pattern), (match) => {
    const text = match[0];
    const start = line.start + from + match.index;
    const end = start + text.length;
    const token = { ...kindOf(match), text, start, end, glued: start === previousEnd };
    previousEnd = end;
    return token;
  });
}

function kindOf(match: RegExpExecArray | RegExpMatchArray): Pick<Token, 'kind' | 'value'> {
  const [, minutes, seconds, number, word] = match;
  if (minutes !== undefined && seconds !== undefined) {
    return { kind: 'clock', value: Number(minutes) * 60 + Number(seconds) };
  }
  if (number !== undefined) return { kind: 'number', value: Number(number) };
  return { kind: word === undefined ? 'sign' : 'word', value: 0 };
}
