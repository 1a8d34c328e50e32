import type { Catalogue } from '../../domain/catalogue/catalogue.ts';
import type { Move } from '../../domain/catalogue/move.ts';
import type {
  AmrapBlock,
  Block,
  EmomBlock,
  Interval,
  LadderBlock,
  Letter,
  OpenBlock,
  Plan,
  PlanFacts,
  PlannedMove,
  RoundsBlock,
  TabataBlock,
  TimeBlock,
} from '../../domain/plan/plan.ts';
import { defaultSettings } from '../../domain/settings.ts';

/** Plans as data, for tests that need no text. A line's id is what it is called here. */

const span = { start: 0, end: 0 };

/** A made-up move, so that a test of logic holds whatever the catalogue says: 3 s a rep, standing, no kit. */
export const testMove = (id: string, facts: Partial<Move> = {}): Move => ({
  id,
  name: id,
  nicknames: [],
  primeMovers: [],
  assisting: [],
  pattern: 'squat',
  kit: [],
  position: 'standing',
  sides: 'both at once',
  oneSideAtATime: false,
  effort: 'reps',
  tempo: { lowerSeconds: 2, bottomPauseSeconds: 0, liftSeconds: 1, topPauseSeconds: 0 },
  level: 1,
  setUpCue: '',
  cue: '',
  cautions: [],
  traits: [],
  energy: { edition: 2024, code: '02054', met: 3.5 },
  source: 'common practice',
  ...facts,
});

const testCatalogue = (...moves: readonly Move[]): Catalogue => ({
  edition: 'test',
  moves,
  byId: new Map(moves.map((move) => [move.id, move])),
});

export const testContext = (...moves: readonly Move[]) => ({
  catalogue: testCatalogue(...moves),
  settings: defaultSettings,
  now: '2026-03-02T09:00:00Z',
});

export const move = (moveId: string, facts: Partial<PlannedMove> = {}): PlannedMove => ({
  id: `line ${moveId}`,
  span,
  choice: { kind: 'move', moveId },
  sides: 'both',
  options: [],
  ...facts,
});

export const letter = (moves: readonly PlannedMove[], facts: Partial<Letter> = {}): Letter => ({
  id: `letter ${moves[0]?.id}`,
  span,
  order: 'in turn',
  moves,
  wholeSetEachSide: false,
  burnout: false,
  say: [],
  ...facts,
});

/** One letter a move. */
export const letters = (...ids: readonly string[]): readonly Letter[] => ids.map((id) => letter([move(id)]));

const base = { id: 'block', span, burnout: false, marchInRests: false };

export const rounds = (
  kind: RoundsBlock['kind'],
  count: number,
  interval: Interval | readonly Interval[] | undefined,
  lines: readonly Letter[],
  facts: Partial<RoundsBlock> = {},
): RoundsBlock => ({
  ...base,
  kind,
  rounds: count,
  intervals: interval === undefined ? [] : 'workSeconds' in interval ? [interval] : interval,
  letters: lines,
  ...facts,
});

export const on = (workSeconds: number, restSeconds: number): Interval => ({ workSeconds, restSeconds });

export const emom = (
  intervals: number,
  lines: readonly Letter[],
  facts: Partial<EmomBlock> = {},
): EmomBlock => ({ ...base, kind: 'emom', intervalSeconds: 60, intervals, letters: lines, ...facts });

export const tabata = (
  times: number,
  lines: readonly Letter[],
  facts: Partial<TabataBlock> = {},
): TabataBlock => ({ ...base, kind: 'tabata', times, letters: lines, ...facts });

export const amrap = (
  seconds: number,
  lines: readonly Letter[],
  facts: Partial<AmrapBlock> = {},
): AmrapBlock => ({ ...base, kind: 'amrap', seconds, letters: lines, ...facts });

export const ladder = (
  rungs: readonly number[],
  lines: readonly Letter[],
  facts: Partial<LadderBlock> = {},
): LadderBlock => ({ ...base, kind: 'ladder', rungs, letters: lines, ...facts });

export const open = (kind: OpenBlock['kind'], seconds: number | 'to the end'): OpenBlock => ({
  id: kind,
  span,
  kind,
  length: seconds === 'to the end' ? { kind: 'to the end' } : { kind: 'fixed', seconds },
  items: [],
  say: [],
});

export const time = (kind: TimeBlock['kind'], seconds: number, explain = false): TimeBlock => ({
  id: `${kind} ${seconds}`,
  span,
  kind,
  seconds,
  explain,
});

export const plan = (blocks: readonly Block[], facts: Partial<PlanFacts> = {}): Plan => ({
  facts: { slotSeconds: 2700, beginners: false, olderAdults: false, hotRoom: false, ...facts },
  blocks,
});
