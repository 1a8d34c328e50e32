import type { BlockKind } from '../../plan/plan.ts';
import { blockWordAt, wordFirst } from '../blocks/block-words.ts';
import { clausesOf, spanOf } from '../blocks/clauses.ts';
import { readBlockLine } from '../blocks/read-block-line.ts';
import { type Duration, duration } from '../durations.ts';
import { spanOfLine } from '../group-lines.ts';
import { limits } from '../limits.ts';
import { type Line, linesOf } from '../lines-of.ts';
import { anyPhrase, type Match, past, sign, wholeNumber } from '../matches.ts';
import { moveMarkAt } from '../moves/move-marks.ts';
import { packTokens } from '../moves/pack-tokens.ts';
import { readKit } from '../read-kit-line.ts';
import { levelAt, levelOf, slotAt } from '../title/title-facts.ts';
import { type Token, tokensOf } from '../tokens-of.ts';
import { type Told, tellNote } from '../told.ts';
import type { BlockNumber, Edit, LabelRef, Place, PlacedEdit } from './edit.ts';
import { type EditReading, partOfLine, tellEdit } from './edit-reading.ts';
import { type EditVerb, editWordAt } from './edit-verbs.ts';
import { labelAt } from './label-at.ts';
import { nearestEdit } from './nearest-edit.ts';

type EditReader = (reading: EditReading) => Edit | undefined;

/** All edits of a message, a line each; the lines below an added block are its moves. */
export function readEdits(keptText: string, told: Told): readonly PlacedEdit[] {
  const lines = linesOf(keptText);
  const edits: PlacedEdit[] = [];
  for (let at = 0; at < lines.length; ) {
    const line = lines[at];
    if (line === undefined) break;
    const below = addsBlock(line) ? linesUpToNextEdit(lines.slice(at + 1)) : [];
    const edit = readEdit(line, below, told);
    if (edit !== undefined) edits.push({ edit, line });
    at += 1 + below.length;
  }
  return edits;
}

function addsBlock(line: Line): boolean {
  const tokens = tokensOf(line);
  const verb = editWordAt(tokens);
  if (verb?.value !== 'add') return false;
  return blockWordAt(wordFirst(tokens.slice(verb.next, placeAtEnd(tokens)?.from))) !== undefined;
}

function linesUpToNextEdit(lines: readonly Line[]): readonly Line[] {
  const next = lines.findIndex((line) => editWordAt(tokensOf(line)) !== undefined);
  return next === -1 ? lines : lines.slice(0, next);
}

function readEdit(line: Line, below: readonly Line[], told: Told): Edit | undefined {
  const tokens = tokensOf(line);
  const verb = editWordAt(tokens);
  const reading: EditReading = { line, tokens, at: verb?.next ?? 0, below, told };
  return verb === undefined ? tellUnknown(reading) : readers[verb.value](reading);
}

function tellUnknown(reading: EditReading): undefined {
  const nearest = nearestEdit(reading.line.text);
  return tellEdit(reading, { code: 'unknown-edit', ...(nearest !== undefined && { nearest }) });
}

function incomplete(reading: EditReading, works: string): undefined {
  return tellEdit(reading, { code: 'edit-incomplete', works });
}

/** The label the edit is about, and the place behind it. */
function labelled(reading: EditReading): Match<LabelRef> {
  return labelAt(reading.tokens, reading.at);
}

const swap: EditReader = (reading) => {
  const { tokens, line } = reading;
  const at = labelled(reading);
  if (at === undefined) return changeBlock(reading) ?? incomplete(reading, 'swap B1 front squat');
  const from = past(tokens, sign(tokens, at.next, ':')?.next ?? at.next, 'with', 'for', 'to', 'by');
  const other = labelAt(tokens, from);
  if (other !== undefined && other.next === tokens.length) {
    return { kind: 'swap with', at: at.value, other: other.value };
  }
  if (from >= tokens.length) return incomplete(reading, `swap ${at.value.label} front squat`);
  const moves = { line: partOfLine(line, tokens, from, tokens.length) };
  return { kind: 'swap', at: at.value, moves };
};

/** `change amrap to 6`, `change the circuit to x4`. */
function changeBlock({ tokens, at }: EditReading): Edit | undefined {
  const from = past(tokens, at, 'the');
  const until = tokens.findIndex(({ text }, place) => place > from && (text === 'to' || text === 'with'));
  const word = blockWordAt(until === -1 ? tokens.slice(from) : tokens.slice(from, until));
  const to = word && blockNumberAt(tokens, past(tokens, from + word.next, 'to', 'with'), word.value.kind);
  return word && to && { kind: 'change block', block: word.value.kind, to };
}

/** One number of a block's line, up to the end of the line. */
function blockNumberAt(tokens: readonly Token[], from: number, kind: BlockKind): BlockNumber | undefined {
  const [first, another] = clausesOf(tokens, from, 'seconds');
  if (first === undefined || another !== undefined) return undefined;
  switch (first.kind) {
    case 'rounds':
      return { kind: 'rounds', rounds: first.rounds };
    case 'interval':
      return {
        kind: 'interval',
        interval: { workSeconds: first.workSeconds, restSeconds: first.restSeconds },
      };
    case 'length':
      // A bare number behind `circuit` or `straight` is neither rounds nor seconds.
      return first.bare && hasRounds(kind) ? undefined : { kind: 'length', length: first };
    default:
      return undefined;
  }
}

function hasRounds(kind: BlockKind): boolean {
  return kind === 'circuit' || kind === 'straight' || kind === 'stations' || kind === 'finisher';
}

/** `before A` or `after C` at the end of the line, with the place where it begins. */
function placeAtEnd(tokens: readonly Token[]): { readonly place: Place; readonly from: number } | undefined {
  const from = tokens.findLastIndex(({ text }) => text === 'before' || text === 'after' || text === 'behind');
  const at = from === -1 ? undefined : labelAt(tokens, from + 1);
  if (at === undefined || at.next < tokens.length) return undefined;
  return { place: { side: tokens[from]?.text === 'before' ? 'before' : 'after', at: at.value }, from };
}

const add: EditReader = (reading) => {
  const { tokens, line, at, told } = reading;
  const placed = placeAtEnd(tokens);
  const part = partOfLine(line, tokens, at, placed?.from ?? tokens.length);
  const isBlock = blockWordAt(wordFirst(tokensOf(part))) !== undefined;
  const head = isBlock ? readBlockLine(part, told) : undefined;
  if (head?.shape === 'open' && head.open !== undefined && placed === undefined) {
    return { kind: 'open block', block: head.open.block };
  }
  if (placed === undefined || placed.from <= at) return incomplete(reading, 'add side plank after C');
  if (head === undefined) return { kind: 'add letter', place: placed.place, moves: { line: part } };
  return { kind: 'add block', place: placed.place, head, below: reading.below, line: part };
};

const drop: EditReader = (reading) => {
  const { tokens } = reading;
  const from = past(tokens, reading.at, 'the');
  const restAfter = anyPhrase(tokens, from, ['rest after', 'rest behind']);
  const behind = restAfter && labelAt(tokens, restAfter.next);
  if (behind !== undefined) return { kind: 'drop rest', at: behind.value };
  const letters = labelsToTheEnd(tokens, from);
  if (letters !== undefined) return { kind: 'drop', letters };
  const block = blockKindAt(tokens, from);
  if (block === undefined) return incomplete(reading, 'drop D');
  return { kind: 'drop block', block, span: spanOf(tokens, from, tokens.length) };
};

/** `A`, `A and B`, `A, B2, C`: labels and nothing else up to the end of the line. */
function labelsToTheEnd(tokens: readonly Token[], from: number): readonly LabelRef[] | undefined {
  const label = labelAt(tokens, from);
  if (label === undefined) return undefined;
  if (label.next === tokens.length) return [label.value];
  const next = past(tokens, sign(tokens, label.next, ',')?.next ?? label.next, 'and', '&', '+');
  const others = labelsToTheEnd(tokens, next);
  return others && [label.value, ...others];
}

function blockKindAt(tokens: readonly Token[], from: number): BlockKind | undefined {
  const word = blockWordAt(tokens.slice(from));
  return word !== undefined && from + word.next === tokens.length ? word.value.kind : undefined;
}

const move: EditReader = (reading) => {
  const at = labelled(reading);
  const placed = placeAtEnd(reading.tokens);
  if (at === undefined || placed === undefined || placed.from !== at.next) {
    return incomplete(reading, 'move C before A');
  }
  return { kind: 'move', at: at.value, place: placed.place };
};

const rounds: EditReader = (reading) => {
  const { tokens } = reading;
  const at = labelled(reading);
  const number = at && wholeNumber(tokens, past(tokens, at.next, 'x', 'to'));
  const end = number && past(tokens, number.next, 'x', 'rounds');
  if (at === undefined || number === undefined || end !== tokens.length)
    return incomplete(reading, 'rounds A x4');
  return { kind: 'rounds', at: at.value, rounds: number.value };
};

const interval: EditReader = (reading) => {
  const at = labelled(reading);
  const clauses = at === undefined ? [] : clausesOf(reading.tokens, at.next, 'seconds');
  const [first, another] = clauses;
  if (at === undefined || first === undefined || another !== undefined) {
    return incomplete(reading, 'block A 45/15');
  }
  if (first.kind === 'length') return { kind: 'length', at: at.value, length: first };
  if (first.kind !== 'interval') return incomplete(reading, 'block A 45/15');
  const { workSeconds, restSeconds } = first;
  return { kind: 'interval', at: at.value, interval: { workSeconds, restSeconds } };
};

/** A label and a length behind it, up to the end of the line. */
function labelAndLength(
  reading: EditReading,
  from: number,
): { readonly at: LabelRef; readonly length: Duration } | undefined {
  const { tokens } = reading;
  const at = labelAt(tokens, from);
  const length = at && duration(tokens, past(tokens, at.next, 'to'), 'seconds');
  if (at === undefined || length === undefined || length.next < tokens.length) return undefined;
  return { at: at.value, length: length.value };
}

const work: EditReader = (reading) => {
  const said = labelAndLength(reading, reading.at);
  if (said === undefined) return incomplete(reading, 'work A 45');
  return { kind: 'work', at: said.at, seconds: said.length.seconds };
};

/** `reps C 10`, `reps C x10`. */
const reps: EditReader = (reading) => {
  const { tokens } = reading;
  const at = labelled(reading);
  const number = at && wholeNumber(tokens, past(tokens, at.next, 'x', 'to'));
  const end = number && past(tokens, number.next, 'reps');
  if (at === undefined || number === undefined || end !== tokens.length)
    return incomplete(reading, 'reps C 10');
  return { kind: 'reps', at: at.value, reps: number.value };
};

const rest: EditReader = (reading) => {
  const said = labelAndLength(reading, reading.at);
  return said === undefined
    ? timeBehind('rest')(reading)
    : { kind: 'rest', at: said.at, seconds: said.length.seconds };
};

/** `rest after C 60`, `rest 60 after C`. */
function timeBehind(time: 'rest' | 'water' | 'explain' | 'set-up' | 'clear-up'): EditReader {
  return (reading) => {
    const { tokens } = reading;
    const after = anyPhrase(tokens, reading.at, ['after', 'behind']);
    const said = after && labelAndLength(reading, after.next);
    if (said !== undefined) return { kind: 'time behind', time, at: said.at, seconds: said.length.seconds };
    const length = duration(tokens, reading.at, 'seconds');
    const placed = placeAtEnd(tokens);
    if (length === undefined || placed?.from !== length.next || placed.place.side !== 'after') {
      return incomplete(reading, `${time} after C 60`);
    }
    return { kind: 'time behind', time, at: placed.place.at, seconds: length.value.seconds };
  };
}

function between(what: 'rounds' | 'letters'): EditReader {
  return (reading) => {
    const said = labelAndLength(reading, reading.at);
    if (said === undefined) return incomplete(reading, `between ${what} A 45`);
    return { kind: 'between', what, at: said.at, seconds: said.length.seconds };
  };
}

const openBlock: EditReader = (reading) => {
  const head = readBlockLine(reading.line, reading.told);
  if (head?.shape !== 'open' || head.open === undefined) return undefined;
  return { kind: 'open block', block: head.open.block };
};

const marked: EditReader = (reading) => {
  const at = labelled(reading);
  const tokens = packTokens(reading.tokens);
  const found = at && moveMarkAt(tokens, at.next);
  const ends = found?.next === tokens.length;
  const mark = found?.value;
  if (at === undefined || !ends) return incomplete(reading, worksFor(reading));
  switch (mark?.kind) {
    case 'sides':
      return { kind: 'sides', at: at.value, sides: mark.sides };
    case 'weight':
      return { kind: 'weight', at: at.value, weight: mark.weight };
    case 'rpe':
      return { kind: 'rpe', at: at.value, rpe: mark.rpe };
    default:
      return incomplete(reading, worksFor(reading));
  }
};

function worksFor({ tokens }: EditReading): string {
  return tokens[0]?.text === 'weight' ? 'weight B1 heavy' : 'sides B1 alternating';
}

/** The word itself is part of the mark: `tempo B1 3-1-1-0`. */
const tempo: EditReader = (reading) => {
  const at = labelled(reading);
  const [word] = reading.tokens;
  const numbers = at === undefined || word === undefined ? [] : [word, ...reading.tokens.slice(at.next)];
  const found = moveMarkAt(packTokens(numbers), 0);
  if (at === undefined || found?.value.kind !== 'tempo' || found.next < numbers.length) {
    return incomplete(reading, 'tempo B1 3-1-1-0');
  }
  if (found.value.threeNumbers)
    tellNote(reading.told, { code: 'last-pause-assumed' }, spanOfLine(reading.line));
  return { kind: 'tempo', at: at.value, tempo: found.value.tempo };
};

function option(kind: 'easier' | 'harder'): EditReader {
  return (reading) => {
    const at = labelled(reading);
    if (at === undefined || at.next < reading.tokens.length) return incomplete(reading, `${kind} B1`);
    return { kind: 'option', option: kind, at: at.value };
  };
}

const kit: EditReader = (reading) => {
  const from = sign(reading.tokens, reading.at, ':')?.next ?? reading.at;
  if (from >= reading.tokens.length) return incomplete(reading, 'kit dumbbells, mats');
  const items = readKit(reading.tokens.slice(from), reading.line.number, reading.told);
  return items && { kind: 'kit', items };
};

const people: EditReader = (reading) => {
  const { tokens } = reading;
  const number = tokens.find(({ kind }) => kind === 'number')?.value;
  const { least, most } = limits.people;
  if (number === undefined) return incomplete(reading, '18 now');
  if (number < least || number > most)
    return tellEdit(reading, { code: 'out-of-range', what: 'people', least, most });
  return { kind: 'facts', facts: { people: number } };
};

const level: EditReader = (reading) => {
  const found = levelAt(reading.tokens, 0);
  if (found?.value.kind === 'mixed') return { kind: 'facts', facts: { level: 'mixed' } };
  const said = found?.value.kind === 'level' ? levelOf(found.value.level) : undefined;
  if (said === undefined) return tellEdit(reading, { code: 'out-of-range', what: 'level', ...limits.level });
  return { kind: 'facts', facts: { level: said } };
};

const slot: EditReader = (reading) => {
  const found = slotAt(reading.tokens, 0);
  if (found?.value.kind !== 'slot' || found.next < reading.tokens.length)
    return incomplete(reading, 'slot 50');
  const { seconds } = found.value;
  const { least, most } = limits.slotSeconds;
  if (seconds < least || seconds > most)
    return tellEdit(reading, { code: 'out-of-range', what: 'slot', least, most });
  return { kind: 'facts', facts: { slotSeconds: seconds } };
};

function wordsFact(fact: 'focus' | 'aim' | 'title'): EditReader {
  return (reading) => {
    const from = sign(reading.tokens, reading.at, ':')?.next ?? reading.at;
    const [first, last] = [reading.tokens[from], reading.tokens.at(-1)];
    if (first === undefined || last === undefined)
      return incomplete(reading, `${fact} ${exampleWords[fact]}`);
    const words = reading.told.text
      .slice(first.start, last.end)
      .replaceAll(/[*_`\s]+/g, ' ')
      .trim();
    return { kind: 'facts', facts: { [fact]: words } };
  };
}

const exampleWords = { focus: 'lower body', aim: 'steady pace', title: 'Row & Squat' } as const;

const readers: Readonly<Record<EditVerb, EditReader>> = {
  swap,
  add,
  drop,
  move,
  rounds,
  block: interval,
  work,
  reps,
  rest,
  water: timeBehind('water'),
  explain: timeBehind('explain'),
  'between rounds': between('rounds'),
  'between letters': between('letters'),
  'open block': openBlock,
  sides: marked,
  weight: marked,
  tempo,
  easier: option('easier'),
  harder: option('harder'),
  kit,
  people,
  level,
  focus: wordsFact('focus'),
  aim: wordsFact('aim'),
  title: wordsFact('title'),
  slot,
};
