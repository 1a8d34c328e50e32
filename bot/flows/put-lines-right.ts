import { keepText } from '../../domain/shorthand/keep-text.ts';

/** A draft with the lines that were named put right or taken out; or what was named and is not there. */
export type LinesPutRight =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'no such line'; readonly line: number; readonly last: number }
  | { readonly kind: 'nothing left' };

/**
 * `line 6: goblet squat`, `line 2:` and `drop line 2`, one or several, a line each; all numbers are those of the
 * draft as it stands. Undefined where anything else is said.
 */
export function putLinesRight(draft: string, said: string): LinesPutRight | undefined {
  const wishes = said
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map(lineWish);
  const lines = keepText(draft).split('\n');
  const put = new Map<number, string>();
  for (const wish of wishes) {
    if (wish === undefined) return undefined;
    if (lines[wish.line - 1] === undefined)
      return { kind: 'no such line', line: wish.line, last: lines.length };
    put.set(wish.line, wish.text);
  }
  if (put.size === 0) return undefined;
  const text = lines
    .map((line, place) => put.get(place + 1) ?? line)
    .filter((line, place) => line.trim() !== '' || !put.has(place + 1))
    .join('\n');
  return text.trim() === '' ? { kind: 'nothing left' } : { kind: 'text', text };
}

type LineWish = { readonly line: number; readonly text: string };

function lineWish(said: string): LineWish | undefined {
  const [, number, behind = '', text = ''] =
    /^\s*line\s+(\d{1,3})(\s*[:.]|(?=\s)|$)\s*(.*)$/iu.exec(said) ?? [];
  if (number !== undefined && (behind !== '' || text !== ''))
    return { line: Number(number), text: outWords.test(text) ? '' : text.trim() };
  const [, dropped] =
    /^\s*(?:drop|delete|remove|cut|skip|leave out)\s+line\s+(\d{1,3})\s*$/iu.exec(said) ??
    /^\s*leave\s+line\s+(\d{1,3})\s+out\s*$/iu.exec(said) ??
    [];
  return dropped === undefined ? undefined : { line: Number(dropped), text: '' };
}

const outWords = /^(?:out|drop|delete|remove)$/iu;
