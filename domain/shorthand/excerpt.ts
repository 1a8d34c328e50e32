import type { Span } from '../span.ts';
import { keepText } from './keep-text.ts';

/** A line of the draft with the place a person should look at, short enough for a phone. */
export type Excerpt = {
  /** From 1. */
  readonly line: number;
  readonly lineText: string;
  /** In characters of `lineText`, as a fixed-width font shows them. */
  readonly caretStart: number;
  readonly caretLength: number;
};

const widest = 60;
const cut = '…';

/** The line under a span; a long one is shortened around it. */
export function excerptOf(text: string, span: Span): Excerpt {
  const kept = keepText(text);
  const start = Math.max(0, Math.min(span.start, kept.length));
  const lineStart = kept.slice(0, start).lastIndexOf('\n') + 1;
  const found = kept.indexOf('\n', start);
  const lineEnd = found === -1 ? kept.length : found;
  const end = Math.max(start, Math.min(span.end, lineEnd));
  const line = kept.slice(0, lineStart).split('\n').length;
  if (lineEnd - lineStart <= widest) {
    const lineText = kept.slice(lineStart, lineEnd);
    return { line, lineText, caretStart: start - lineStart, caretLength: Math.max(1, end - start) };
  }
  const { from, until } = windowAround(start, end, lineStart, lineEnd);
  const head = from > lineStart ? cut : '';
  const tail = until < lineEnd ? cut : '';
  return {
    line,
    lineText: head + kept.slice(from, until) + tail,
    caretStart: head.length + start - from,
    caretLength: Math.max(1, Math.min(end, until) - start),
  };
}

/** As much of the line as fits, the span in its middle where there is room on both sides. */
function windowAround(
  start: number,
  end: number,
  lineStart: number,
  lineEnd: number,
): { readonly from: number; readonly until: number } {
  const width = widest - 2 * cut.length;
  const spare = Math.max(0, width - (end - start));
  const wanted = Math.max(lineStart, start - Math.floor(spare / 2));
  const from = Math.max(lineStart, Math.min(wanted, lineEnd - width));
  return { from, until: Math.min(lineEnd, from + width) };
}
