import { clockText } from '../../plan/clock-text.ts';
import type { AmrapBlock, EmomBlock, TabataBlock } from '../../plan/plan.ts';
import type { Span } from '../../span.ts';
import { duration } from '../durations.ts';
import { limits } from '../limits.ts';
import { phrase, sign } from '../matches.ts';
import {
  type BlockReading,
  clauseOf,
  nameOf,
  onlyThese,
  say,
  tell,
  within,
  wordSpan,
} from './block-reading.ts';
import { type ClauseKind, clausesOf, type PlacedClause, spanOf } from './clauses.ts';
import { readPairs } from './read-pairs.ts';

const shared: readonly ClauseKind[] = ['name', 'march in the rests', 'in pairs', 'burnout', 'count-in'];

/** What every block with letters may say beside its own numbers. */
export function sharedFacts(reading: BlockReading, clauses: readonly PlacedClause[]) {
  const countIn = clauseOf(clauses, 'count-in');
  if (countIn !== undefined) within(reading, countIn.span, 'rest', countIn.seconds, limits.restSeconds);
  return {
    id: '',
    span: reading.span,
    ...nameOf(reading, clauses),
    letters: [],
    burnout: clauseOf(clauses, 'burnout') !== undefined,
    marchInRests: clauseOf(clauses, 'march in the rests') !== undefined,
    ...readPairs(reading, clauses),
    ...(countIn && { countInSeconds: countIn.seconds }),
  };
}

/** `emom 10`, `emom 10, 40 work`. */
export function readEmomLine(reading: BlockReading): EmomBlock | undefined {
  const clauses = clausesOf(reading.tokens, reading.at, 'minutes');
  const length = clauseOf(clauses, 'length');
  const asEvery = everyFormOf(reading, clauses);
  if (asEvery !== undefined) {
    const span = spanOf(reading.tokens, reading.at, reading.tokens.length);
    return tell(reading, span, { code: 'unknown-words', on: 'emom', works: asEvery });
  }
  onlyThese(reading, clauses, [...shared, 'length', 'work'], 'emom 10, 40 work');
  if (length === undefined) {
    return tell(reading, wordSpan(reading), { code: 'number-needed', block: 'emom', works: 'emom 10' });
  }
  within(reading, length.span, 'length', length.seconds, limits.lengthSeconds);
  if (length.seconds % 60 !== 0) return tell(reading, length.span, { code: 'whole-minutes' });
  return emomOf(reading, clauses, 60, length.seconds / 60);
}

/** `emom x5, 2:00` and `emom 10 every 2 min` have an interval of their own: the form that says it. */
function everyFormOf({ tokens, at }: BlockReading, clauses: readonly PlacedClause[]): string | undefined {
  const rounds = clauseOf(clauses, 'rounds');
  const length = clauseOf(clauses, 'length');
  if (rounds !== undefined)
    return length === undefined
      ? `emom ${rounds.rounds}`
      : `every ${clockText(length.seconds)} x${rounds.rounds}`;
  const every = tokens.findIndex(({ text }, place) => place >= at && text === 'every');
  const interval = every === -1 ? undefined : duration(tokens, every + 1, 'minutes')?.value.seconds;
  if (interval === undefined || interval === 0) return undefined;
  const times = length === undefined ? usualTimes : Math.max(1, Math.round(length.seconds / interval));
  return `every ${clockText(interval)} x${times}`;
}

/** A bare number under this is asked: minutes are as likely. */
const leastBareSeconds = 15;

/** `every 1:30 x6`, `every 2 min for 10 min`. */
export function readEveryLine(reading: BlockReading): EmomBlock | undefined {
  const { tokens, at } = reading;
  const minute = phrase(tokens, at, 'minute');
  const length = duration(tokens, at, 'seconds');
  const interval = minute === undefined ? length?.value.seconds : 60;
  const behind = minute?.next ?? length?.next ?? at;
  const word = phrase(tokens, sign(tokens, behind, ',')?.next ?? behind, 'for');
  const clauses = clausesOf(tokens, word?.next ?? behind, 'minutes');
  onlyThese(
    reading,
    clauses,
    [...shared, 'rounds', 'work', ...(word === undefined ? [] : (['length'] as const))],
    works(interval),
  );
  const rounds = clauseOf(clauses, 'rounds');
  const total = clauseOf(clauses, 'length');
  if (interval === undefined || (rounds ?? total) === undefined) {
    const said = spanOf(tokens, 0, behind);
    return tell(reading, said, { code: 'number-needed', block: 'emom', works: works(interval) });
  }
  const span = spanOf(tokens, at, behind);
  if (length?.value.bare === true && interval < leastBareSeconds) {
    const times = rounds?.rounds ?? usualTimes;
    const [minutes, seconds] = [
      `every ${clockText(interval * 60)} x${times}`,
      `every ${interval}s x${times}`,
    ];
    return tell(reading, span, { code: 'unit-needed', works: [minutes, seconds] });
  }
  if (rounds !== undefined && total !== undefined) {
    return tell(reading, total.span, { code: 'said-twice', what: 'rounds' });
  }
  const count = rounds?.rounds ?? (total?.seconds ?? 0) / interval;
  if (!Number.isInteger(count) && total !== undefined) {
    const nearest = `every ${clockText(interval)} x${Math.max(1, Math.round(count))}`;
    return tell(reading, total.span, { code: 'unknown-words', on: 'emom', works: nearest });
  }
  within(reading, span, 'work', interval, limits.workSeconds);
  within(reading, (rounds ?? total)?.span ?? span, 'rounds', count, {
    least: 1,
    most: limits.lengthSeconds.most,
  });
  within(reading, reading.span, 'length', interval * count, limits.lengthSeconds);
  return emomOf(reading, clauses, interval, count);
}

const usualTimes = 6;

function works(interval = 90): string {
  return `every ${clockText(interval)} x${usualTimes}`;
}

function emomOf(
  reading: BlockReading,
  clauses: readonly PlacedClause[],
  intervalSeconds: number,
  intervals: number,
): EmomBlock | undefined {
  const work = clauseOf(clauses, 'work');
  const [workSeconds, another] = work?.values ?? [];
  if (work !== undefined && another !== undefined) {
    return tell(reading, work.span, { code: 'unknown-words', on: 'emom', works: 'emom 10, 40 work' });
  }
  if (work !== undefined) within(reading, work.span, 'work', workSeconds ?? 0, limits.workSeconds);
  return {
    kind: 'emom',
    ...sharedFacts(reading, clauses),
    intervalSeconds,
    intervals,
    ...(workSeconds !== undefined && { workSeconds }),
  };
}

/** `tabata`, `tabata x3, between 60`, `tabata (8 × 20/10)`. */
export function readTabataLine(reading: BlockReading): TabataBlock | undefined {
  const clauses = clausesOf(reading.tokens, reading.at, 'seconds').filter(
    (clause) => !(clause.kind === 'interval' && clause.workSeconds === 20 && clause.restSeconds === 10),
  );
  const fixed = clauses.find(({ kind }) => kind === 'interval' || kind === 'work' || kind === 'rest');
  const number = clauseOf(clauses, 'length');
  if (fixed !== undefined) return tell(reading, fixed.span, { code: 'tabata-is-fixed' });
  if (number !== undefined) {
    const times = Math.max(1, Math.min(limits.rounds.most, number.number));
    return tell(reading, number.span, { code: 'unit-needed', works: ['tabata', `tabata x${times}`] });
  }
  onlyThese(reading, clauses, [...shared, 'rounds', 'between', 'tabata protocol'], 'tabata x3, between 60');
  const rounds = clauseOf(clauses, 'rounds');
  const between = clauseOf(clauses, 'between');
  if (rounds !== undefined) within(reading, rounds.span, 'rounds', rounds.rounds, limits.rounds);
  if (between !== undefined) within(reading, between.span, 'rest', between.seconds, limits.restSeconds);
  return {
    kind: 'tabata',
    ...sharedFacts(reading, clauses),
    times: rounds?.rounds ?? 1,
    ...(between && { betweenSeconds: between.seconds }),
  };
}

/** `amrap 8, about 5 rounds`. */
export function readAmrapLine(reading: BlockReading): AmrapBlock | undefined {
  const clauses = clausesOf(reading.tokens, reading.at, 'minutes');
  onlyThese(reading, clauses, [...shared, 'length', 'about rounds'], 'amrap 8, about 5 rounds');
  const length = clauseOf(clauses, 'length');
  if (length === undefined) {
    return tell(reading, wordSpan(reading), { code: 'number-needed', block: 'amrap', works: 'amrap 8' });
  }
  return amrapOf(reading, clauses, 'amrap', length);
}

/** `for time, cap 10:00`. */
export function readForTimeLine(reading: BlockReading): AmrapBlock | undefined {
  const clauses = clausesOf(reading.tokens, reading.at, 'seconds');
  onlyThese(reading, clauses, [...shared, 'length', 'in', 'about rounds'], 'for time, cap 10:00');
  const cap = clauseOf(clauses, 'in') ?? clauseOf(clauses, 'length');
  if (cap === undefined) {
    const works = 'for time, cap 10:00';
    return tell(reading, wordSpan(reading), { code: 'number-needed', block: 'for time', works });
  }
  return amrapOf(reading, clauses, 'for time', { ...cap, seconds: secondsSaid(reading, cap) });
}

/** A bare song or cap of so few is minutes, of more it is seconds. */
const mostBareMinutes = 15;

/** The seconds of a length; how a bare number was read is said, since both units might be meant. */
export function secondsSaid(
  reading: BlockReading,
  { bare, seconds: typed, span }: { readonly bare: boolean; readonly seconds: number; readonly span: Span },
): number {
  if (!bare) return typed;
  const seconds = typed <= mostBareMinutes ? typed * 60 : typed;
  const read = reading.told.text.slice(span.start, span.end);
  say(reading, span, { code: 'read-as', read, as: clockText(seconds) });
  return seconds;
}

function amrapOf(
  reading: BlockReading,
  clauses: readonly PlacedClause[],
  kind: 'amrap' | 'for time',
  length: PlacedClause & { readonly seconds: number },
): AmrapBlock {
  const about = clauseOf(clauses, 'about rounds');
  within(reading, length.span, 'length', length.seconds, limits.lengthSeconds);
  if (about !== undefined) within(reading, about.span, 'rounds', about.rounds, limits.rounds);
  return {
    kind,
    ...sharedFacts(reading, clauses),
    seconds: length.seconds,
    ...(about && { aboutRounds: about.rounds }),
  };
}
