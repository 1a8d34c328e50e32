import type { Letter } from '../../plan/plan.ts';
import type { Span } from '../../span.ts';
import type { Line } from '../lines-of.ts';
import { type Told, tellProblem } from '../told.ts';
import { joinLetters } from './typed-labels.ts';

/** The block line that says how many lines of one move are one letter. */
export type GroupHead = { readonly line: Line; readonly span: Span; readonly movesALetter: number };

/** More than three is a giant set: all lines there are. */
const mostCounted = 3;

/**
 * Neighbouring lines of one move joined two by two under `superset`, three by three under `tri-set`, all of them
 * under `giant set`; a line with several moves is a letter already. Lines that are left over are told.
 */
export function joinInGroups(letters: readonly Letter[], head: GroupHead, told: Told): readonly Letter[] {
  return runsOf(letters).flatMap((run) => {
    const [first] = run;
    if (first === undefined || first.moves.length > 1) return run;
    const each = head.movesALetter > mostCounted ? run.length : head.movesALetter;
    if (each < 2 || run.length % each !== 0) {
      tellLeftOver(run, each, head, told);
      return run;
    }
    return inParts(run, each).flatMap((part) => {
      const [start] = part;
      return start === undefined
        ? []
        : [
            joinLetters(
              start,
              part,
              part.map((letter) => wordsOf(letter, told)),
              told,
            ),
          ];
    });
  });
}

function tellLeftOver(run: readonly Letter[], each: number, { line, span }: GroupHead, told: Told): void {
  const moves = run.slice(0, Math.max(2, each)).map((letter) => wordsOf(letter, told));
  const works = (moves.length > 1 ? moves : [...moves, '…']).join(' + ');
  tellProblem(told, line.number, span, {
    code: 'lines-left-over',
    lines: run.length,
    each: Math.max(2, each),
    works,
  });
}

function wordsOf({ span }: Letter, { text }: Told): string {
  return text
    .slice(span.start, span.end)
    .replaceAll(/[*_`\s]+/g, ' ')
    .trim();
}

/** Neighbours of one move each together; every other letter alone. */
function runsOf(letters: readonly Letter[]): readonly (readonly Letter[])[] {
  const runs: Letter[][] = [];
  for (const letter of letters) {
    const run = runs.at(-1);
    if (letter.moves.length === 1 && run?.[0]?.moves.length === 1) run.push(letter);
    else runs.push([letter]);
  }
  return runs;
}

function inParts<Item>(items: readonly Item[], size: number): readonly (readonly Item[])[] {
  return Array.from({ length: items.length / size }, (_, place) =>
    items.slice(place * size, (place + 1) * size),
  );
}
