import type { Muscle } from '../catalogue/muscles.ts';
import type { Pattern } from '../catalogue/patterns.ts';
import type { Context } from '../context.ts';
import type { LineId, Plan } from '../plan/plan.ts';
import { type MoveInPlan, movesByLine } from '../timing/planned-moves.ts';
import type { Segment, Timeline } from '../timing/timeline.ts';
import { energyOfClass } from './energy.ts';
import type { Load, LoadRow } from './load.ts';
import { rowOfBouts } from './rows-of-bouts.ts';
import { rowsOfSharedWork } from './rows-of-shared-work.ts';
import { sessionLoad } from './session-load.ts';

/** Prime movers 1, assisting muscles ½: Pelland JC et al., Sports Med 2025, doi 10.1007/s40279-025-02344-w. */
const assistingShare = 1 / 2;

/** What a class loads, and how much: a row a move a block, and their sums by muscle and pattern. */
export function measureLoad(
  plan: Plan,
  timeline: Timeline,
  context: Pick<Context, 'catalogue' | 'settings' | 'groupEffort'>,
): Load {
  const moves = movesByLine(plan, context);
  const rows = rowsOfClass(plan, timeline, moves, context);
  const known = rows.flatMap((row) => {
    const move = moves.get(row.move)?.known;
    return move === undefined ? [] : [{ row, move }];
  });
  const loaded = known.filter(({ move }) => move.effort === 'reps' || move.effort === 'hold');
  const byMuscle = (amount: (row: LoadRow) => number, share: number) =>
    total<Muscle>(
      loaded.flatMap(({ row, move }) => [
        ...move.primeMovers.map((muscle) => [muscle, amount(row)] as const),
        ...move.assisting.map((muscle) => [muscle, share * amount(row)] as const),
      ]),
    );
  return {
    setsByMuscle: byMuscle(({ sets }) => sets, assistingShare),
    tensionSecondsByMuscle: byMuscle(({ tensionSeconds }) => tensionSeconds, 1),
    setsByPattern: total<Pattern>(known.map(({ row, move }) => [move.pattern, row.sets] as const)),
    conditioningSeconds: rows.reduce((sum, { conditioningSeconds }) => sum + conditioningSeconds, 0),
    rows,
    ...(context.settings.energyOn ? { energy: energyOfClass(plan, timeline, context) } : {}),
    ...(context.groupEffort === undefined
      ? {}
      : { sessionLoad: sessionLoad(context.groupEffort, timeline.totalSeconds) }),
  };
}

function rowsOfClass(
  plan: Plan,
  timeline: Timeline,
  moves: ReadonlyMap<LineId, MoveInPlan>,
  context: Pick<Context, 'catalogue' | 'settings'>,
): readonly LoadRow[] {
  const work = timeline.segments.filter(({ kind }) => kind === 'work');
  const ofBouts = [...moves.values()].flatMap((entry) => {
    const own = work.filter(({ move }) => move === entry.planned.id);
    const { known } = entry;
    if (known === undefined || own.length === 0) return [];
    return [rowOfBouts({ ...entry, known }, own, plan.blocks[entry.block], timeline, context)];
  });
  const ofSharedWork = work.flatMap((stretch) => rowsOfStretch(stretch, plan, timeline, moves, context));
  return [...ofBouts, ...ofSharedWork].sort((one, other) => one.block - other.block);
}

function rowsOfStretch(
  stretch: Segment,
  plan: Plan,
  timeline: Timeline,
  moves: ReadonlyMap<LineId, MoveInPlan>,
  context: Pick<Context, 'catalogue' | 'settings'>,
): readonly LoadRow[] {
  const block = plan.blocks[stretch.block];
  if (block?.kind !== 'amrap' && block?.kind !== 'for time' && block?.kind !== 'ladder') return [];
  const entries = (stretch.sharedBy ?? []).flatMap((line) => moves.get(line) ?? []);
  const late = timeline.lateStarts.find(({ startSeconds }) => startSeconds === stretch.startSeconds);
  const seconds = stretch.endSeconds - stretch.startSeconds;
  return rowsOfSharedWork(block, entries, seconds, late?.lateSeconds ?? 0, context);
}

function total<Key extends string>(
  amounts: readonly (readonly [Key, number])[],
): Readonly<Partial<Record<Key, number>>> {
  const sums: Partial<Record<Key, number>> = {};
  for (const [key, amount] of amounts) sums[key] = (sums[key] ?? 0) + amount;
  return sums;
}
