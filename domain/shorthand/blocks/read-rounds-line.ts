import type { Interval, RoundsBlock } from '../../plan/plan.ts';
import { limits } from '../limits.ts';
import { type BlockReading, clauseOf, nameOf, onlyThese, tell, within, wordSpan } from './block-reading.ts';
import { type ClauseKind, clausesOf, type PlacedClause } from './clauses.ts';
import { readPairs } from './read-pairs.ts';

type RoundsKind = RoundsBlock['kind'];

const forms: Readonly<Record<RoundsKind, string>> = {
  circuit: 'circuit x3, 40/20',
  straight: 'straight x3, 40/20',
  stations: 'stations x2, 45/15',
  finisher: 'finisher, 60/0',
};

const shared: readonly ClauseKind[] = [
  'rounds',
  'interval',
  'work',
  'rest',
  'name',
  'march in the rests',
  'in pairs',
  'burnout',
  'count-in',
];

const allowed: Readonly<Record<RoundsKind, readonly ClauseKind[]>> = {
  circuit: [...shared, 'between rounds'],
  straight: [...shared, 'between letters', 'reps'],
  stations: [...shared, 'between rounds', 'people a station'],
  finisher: [...shared, 'between rounds'],
};

/**
 * `circuit x3, 40/20` and its kin. A straight line without rounds has `rounds` 0 until its letters are
 * known; absent where the line can't be read.
 */
export function readRoundsLine(reading: BlockReading, kind: RoundsKind): RoundsBlock | undefined {
  const clauses = numberedClauses(reading);
  onlyThese(reading, clauses, allowed[kind], forms[kind]);
  const times = timesOf(reading, clauses, kind);
  if (times === undefined) return undefined;
  const betweenRounds = clauseOf(clauses, 'between rounds');
  const betweenLetters = clauseOf(clauses, 'between letters');
  const people = clauseOf(clauses, 'people a station');
  const countIn = clauseOf(clauses, 'count-in');
  for (const clause of [betweenRounds, betweenLetters, countIn]) {
    if (clause !== undefined) within(reading, clause.span, 'rest', clause.seconds, limits.restSeconds);
  }
  if (people !== undefined) within(reading, people.span, 'people', people.people, limits.people);
  return {
    kind,
    id: '',
    span: reading.span,
    ...nameOf(reading, clauses),
    ...times,
    letters: [],
    burnout: clauseOf(clauses, 'burnout') !== undefined,
    marchInRests: clauseOf(clauses, 'march in the rests') !== undefined,
    ...readPairs(reading, clauses),
    ...(countIn && { countInSeconds: countIn.seconds }),
    ...(betweenRounds && { betweenRoundsSeconds: betweenRounds.seconds }),
    ...(betweenLetters && { betweenLettersSeconds: betweenLetters.seconds }),
    ...(people && { peoplePerStation: people.people }),
  };
}

/** What is said behind the word, a number right behind it being the block's name. */
function numberedClauses(reading: BlockReading): readonly PlacedClause[] {
  const { tokens, at } = reading;
  const clauses = clausesOf(tokens, at, 'seconds');
  const [first, ...others] = clauses;
  const number = tokens[at];
  if (number?.kind !== 'number' || first?.span.start !== number.start) return clauses;
  const { start, end } = number;
  const name: PlacedClause = { kind: 'name', start, end, span: { start, end } };
  if (first.kind === 'length' && first.bare) return [name, ...others];
  const ownsList = first.kind === 'work' && tokens[at + 2]?.kind === 'number';
  return ownsList ? [name, ...clausesOf(tokens, at + 1, 'seconds')] : clauses;
}

type Times = Pick<RoundsBlock, 'rounds' | 'intervals'>;

function timesOf(
  reading: BlockReading,
  clauses: readonly PlacedClause[],
  kind: RoundsKind,
): Times | undefined {
  const interval = clauseOf(clauses, 'interval');
  const work = clauseOf(clauses, 'work');
  const rest = clauseOf(clauses, 'rest');
  const roundsClause = clauseOf(clauses, 'rounds');
  if (interval !== undefined && (work ?? rest) !== undefined) {
    return tell(reading, (work ?? rest ?? interval).span, { code: 'said-twice', what: 'work and rest' });
  }
  const reps = clauseOf(clauses, 'reps');
  if (reps !== undefined && kind === 'straight') {
    if ((interval ?? work) !== undefined)
      return tell(reading, reps.span, { code: 'unknown-words', on: kind, works: forms[kind] });
    within(reading, reps.span, 'reps', reps.reps, limits.reps);
  }
  const works = interval === undefined ? (work?.values ?? []) : [interval.workSeconds];
  const rests = interval === undefined ? (rest?.values ?? []) : [interval.restSeconds];
  const workSpan = (interval ?? work)?.span ?? reading.span;
  const restSpan = (interval ?? rest)?.span ?? reading.span;
  for (const seconds of works) within(reading, workSpan, 'work', seconds, limits.workSeconds);
  for (const seconds of rests) within(reading, restSpan, 'rest', seconds, limits.restSeconds);
  if (works.length === 0 && (kind !== 'straight' || rests.length > 1)) {
    return tell(reading, wordSpan(reading), { code: 'number-needed', block: kind, works: forms[kind] });
  }
  if (works.length > 1 && rests.length > 1 && works.length !== rests.length) {
    return tell(reading, restSpan, { code: 'lists-differ', works: works.length, rests: rests.length });
  }
  const values = Math.max(works.length, rests.length);
  if (values > 1 && roundsClause !== undefined && roundsClause.rounds !== values) {
    return tell(reading, roundsClause.span, {
      code: 'rounds-mismatch',
      values,
      rounds: roundsClause.rounds,
    });
  }
  const rounds = values > 1 ? values : (roundsClause?.rounds ?? (kind === 'finisher' ? 1 : undefined));
  if (rounds === undefined) {
    if (kind === 'straight' && works.length === 0) return { rounds: 0, intervals: restAlone(rests) };
    return tell(reading, wordSpan(reading), { code: 'number-needed', block: kind, works: forms[kind] });
  }
  within(reading, roundsClause?.span ?? workSpan, 'rounds', rounds, limits.rounds);
  return works.length === 0
    ? { rounds, intervals: restAlone(rests) }
    : { rounds, intervals: oneWhereAllAlike(paired(works, rests)) };
}

/** A rest without a work time: the work is then reps × seconds a rep. */
function restAlone(rests: readonly number[]): readonly Interval[] {
  return rests.map((restSeconds) => ({ workSeconds: 0, restSeconds }));
}

/** One interval a round; a single work or rest holds for all, and a block without a rest has 0. */
function paired(works: readonly number[], rests: readonly number[]): readonly Interval[] {
  return Array.from({ length: Math.max(works.length, rests.length) }, (_, round) => ({
    workSeconds: works[round] ?? works[0] ?? 0,
    restSeconds: rests[round] ?? rests[0] ?? 0,
  }));
}

function oneWhereAllAlike(intervals: readonly Interval[]): readonly Interval[] {
  const [first] = intervals;
  const alike = intervals.every(
    ({ workSeconds, restSeconds }) => workSeconds === first?.workSeconds && restSeconds === first.restSeconds,
  );
  return first !== undefined && alike ? [first] : intervals;
}
