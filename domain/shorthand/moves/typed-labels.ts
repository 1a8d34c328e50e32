import type { Letter } from '../../plan/plan.ts';
import type { Line } from '../lines-of.ts';
import { type Told, tellNote } from '../told.ts';
import type { ReadLetter } from './read-letter.ts';

/** A letter someone typed in front of a move: `A1`, `1a)`, `B:`. `length` is how much of the line it takes. */
export type TypedLabel = { readonly letter: string; readonly label: string; readonly length: number };

const letterFirst = /^\s*([a-wyz]|([a-z])\2|a[a-z])(\d{1,2})\s*[.):]?\s+(?=\S)/;
const numberFirst = /^\s*(\d{1,2})([a-z])(?:\s*[.):]\s*|\s+)(?=\S)/;
const letterAlone = /^\s*([a-z])\s*[.):]\s*(?=\S)/;
/** `30s`, `5m`, `3x` are numbers with a unit, unless a mark stands behind. */
const units = new Set(['s', 'm', 'h', 'x']);

export function typedLabelOf(line: Line): TypedLabel | undefined {
  const first = letterFirst.exec(line.clean);
  if (first !== null) return labelled(first[1], first[3], first[0].length);
  const number = numberFirst.exec(line.clean);
  if (number !== null && (/[.):]/.test(number[0]) || !units.has(number[2] ?? ''))) {
    return labelled(number[2], number[1], number[0].length);
  }
  const alone = letterAlone.exec(line.clean);
  return alone === null ? undefined : labelled(alone[1], '', alone[0].length);
}

function labelled(letter = '', number = '', length: number): TypedLabel {
  return { letter: letter.toUpperCase(), label: `${letter.toUpperCase()}${number}`, length };
}

/** Neighbouring lines with the same typed letter are one letter; a rest on any of them is the letter's. */
export function joinTypedLetters(read: readonly ReadLetter[], told: Told): readonly Letter[] {
  return runsOf(read).flatMap((run) => {
    const letters = run.flatMap(({ letter }) => letter ?? []);
    const [first] = letters;
    if (first === undefined || letters.length < run.length) return [];
    if (letters.length === 1) return [first];
    return [
      joinLetters(
        first,
        letters,
        run.map(({ label }) => label?.label ?? ''),
        told,
      ),
    ];
  });
}

/** Several letters as one, its moves back to back; `labels` are what they are called where that is said. */
export function joinLetters(
  first: Letter,
  letters: readonly Letter[],
  labels: readonly string[],
  told: Told,
): Letter {
  const span = { start: first.span.start, end: letters.at(-1)?.span.end ?? first.span.end };
  tellNote(told, { code: 'joined', labels }, span);
  const rests = letters.flatMap(({ restSeconds }) => restSeconds ?? []);
  const restSeconds = rests.at(-1);
  const droppedSeconds = rests.slice(0, -1).filter((seconds) => seconds !== restSeconds);
  if (restSeconds !== undefined && droppedSeconds.length > 0) {
    tellNote(told, { code: 'joined-rests', keptSeconds: restSeconds, droppedSeconds }, span);
  }
  const rounds = letters.findLast((letter) => letter.rounds !== undefined)?.rounds;
  return {
    ...first,
    span,
    moves: letters.flatMap(({ moves }) => moves),
    wholeSetEachSide: letters.some(({ wholeSetEachSide }) => wholeSetEachSide),
    burnout: letters.some(({ burnout }) => burnout),
    ...(restSeconds === undefined ? {} : { restSeconds }),
    ...(rounds === undefined ? {} : { rounds }),
    say: letters.flatMap(({ say }) => say),
  };
}

function runsOf(read: readonly ReadLetter[]): readonly (readonly ReadLetter[])[] {
  const runs: ReadLetter[][] = [];
  for (const line of read) {
    const run = runs.at(-1);
    const joins = line.label !== undefined && run?.at(-1)?.label?.letter === line.label.letter;
    if (joins) run?.push(line);
    else runs.push([line]);
  }
  return runs;
}
