import type { KitItem } from '../catalogue/kit.ts';
import { kitForMove } from '../catalogue/kit-for-move.ts';
import type { Pattern } from '../catalogue/patterns.ts';
import type { Context } from '../context.ts';
import type { Load } from '../load/load.ts';
import { kitAtHand, plannedLines } from '../plan/class-facts.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { mendWith, swapFor } from './mends.ts';
import { namedFocus } from './named-focus.ts';

export type PushPullUneven = FindingBase & {
  readonly code: 'push-pull-uneven';
  readonly pushSets: number;
  readonly pullSets: number;
};

const pushes: readonly Pattern[] = ['horizontal push', 'vertical push'];
const pulls: readonly Pattern[] = ['horizontal pull', 'vertical pull'];

/** Kit that a pull can be done with; without any of it a class can hardly pull. */
const kitToPull: readonly KitItem[] = [
  'dumbbell',
  'kettlebell',
  'barbell',
  'long band',
  'suspension strap',
  'sandbag',
];

/** Far more pushing than pulling or the reverse, where both were possible and the focus names neither or both. */
export function pushPullUneven(subject: CheckSubject, context: Context): readonly PushPullUneven[] {
  const { plan, load } = subject;
  const atHand = kitAtHand(plan, context);
  const focus = namedFocus(plan);
  const isJudged = focus.size === 0 || (focus.has('chest') && focus.has('upper back'));
  const pushSets = setsOf(load, pushes);
  const pullSets = setsOf(load, pulls);
  if (!isJudged || !kitToPull.some((item) => atHand.has(item)) || !isUneven(pushSets, pullSets, context)) {
    return [];
  }
  const [many, few] = pushSets > pullSets ? [pushes, pulls] : [pulls, pushes];
  const lines = plannedLines(plan).flatMap(({ planned }) => {
    const move = knownMove(planned, context);
    return move !== undefined && many.includes(move.pattern) ? [planned.id] : [];
  });
  return [
    {
      code: 'push-pull-uneven',
      severity: 'look at',
      lines,
      source: 'common practice',
      pushSets,
      pullSets,
      ...mendWith(
        swapToEven(lines, few, Math.max(pushSets, pullSets), Math.min(pushSets, pullSets), subject, context),
      ),
    },
  ];
}

function isUneven(one: number, other: number, { settings }: Context): boolean {
  const { pushPullRatio, pushPullSets } = settings.checks;
  const [most, least] = [Math.max(one, other), Math.min(one, other)];
  return most - least >= pushPullSets && most > least * pushPullRatio;
}

function setsOf(load: Load, patterns: readonly Pattern[]): number {
  return patterns.reduce((sum, pattern) => sum + (load.setsByPattern[pattern] ?? 0), 0);
}

/** The last line whose exchange for a move of the missing kind evens the two out. */
function swapToEven(
  lines: readonly string[],
  wanted: readonly Pattern[],
  most: number,
  least: number,
  subject: CheckSubject,
  context: Context,
): string | undefined {
  const atHand = kitAtHand(subject.plan, context);
  const line = lines.findLast((id) => {
    const sets = subject.load.rows.filter(({ move }) => move === id).reduce((sum, row) => sum + row.sets, 0);
    return !isUneven(most - sets, least + sets, context);
  });
  const used = plannedLines(subject.plan).flatMap(({ planned }) => knownMove(planned, context)?.id ?? []);
  const other = context.catalogue.moves.find(
    (move) =>
      wanted.includes(move.pattern) &&
      move.sides === 'both at once' &&
      move.effort === 'reps' &&
      !used.includes(move.id) &&
      move.level <= 2 &&
      kitForMove(move, (item) => atHand.has(item)) !== undefined,
  );
  return line && swapFor(subject.plan, line, other);
}
