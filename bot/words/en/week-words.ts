import type { weekdays } from '../../../domain/calendar/iso-week.ts';
import type { Pattern } from '../../../domain/catalogue/patterns.ts';
import { patterns } from '../../../domain/catalogue/patterns.ts';
import type { MuscleChange, WeekComparison } from '../../../domain/week/compare-weeks.ts';
import type { Saying } from '../../../domain/week/sayings.ts';
import type { CorrectionCause, WeekCorrection } from '../../../domain/week/told-week.ts';
import type {
  HabitWeek,
  MuscleWeek,
  PlanWish,
  SlotWeek,
  ToCome,
  Trust,
  UnderTrained,
  WeekExceptions,
  WeekMend,
  WeekReport,
} from '../../../domain/week/week-report.ts';
import { setsText } from './card-words.ts';
import { personFirst } from './person-words.ts';
import { whenText } from './talk-words.ts';

/** What makes typed text inert where it is shown. */
type Safe = (typed: string) => string;

/** The week's report. Told by slot, never by instructor; numbers are interval sets. */
export const weekWords = {
  title: (week: string) => `Week ${Number(week.slice(6))}, ${week.slice(0, 4)}`,
  late: 'This report comes late.',
  trust: trustText,
  underTrainedTitle: 'Under-trained',
  underTrained: underTrainedLines,
  moreInThread: (more: number) => `${more} more in the thread`,
  nothingUnderTrained: (report: WeekReport): string =>
    report.trust.withPlan === 0
      ? 'No plans of this week are known, so nothing can be said of its load.'
      : 'Nothing under-trained: every first-priority muscle had its sets, every group its two days.',
  mendTitle: 'To mend it',
  mend: ({ slotName, startsAt, edit, replaces, muscle, gainedSets }: WeekMend, safe: Safe) =>
    `in ${safe(slotName)}, ${whenText(startsAt)}: ${safe(edit)} in the place of ${safe(replaces)} (${muscle} +${setsText(gainedSets)})`,
  wish: ({ slotName, startsAt, moves }: PlanWish, safe: Safe) =>
    `plan ${moves.join(' and ')} into ${safe(slotName)}, ${whenText(startsAt)}, which has no plan yet`,
  mendButton: 'Apply this edit',
  mendHint: 'For the plan’s author or a head coach. The plan then goes to review.',
  mendApplied: (by: string, edit: string, version: number) =>
    `${personFirst(by)} applied it: ${edit}. The plan is at v${version}.`,
  mendGone: 'This edit is applied already. The plan’s own thread shows it.',
  mendForAuthor: (by: string, slotName: string, week: string) =>
    `${personFirst(by)} applied the edit that the report on ${weekName(week)} proposed for ${slotName}. It can be taken back: undo.`,
  regularsTitle: 'What regulars miss',
  habitsUnknown: 'Not known: no slot habit has a plan for all its classes.',
  worstHabit: (report: WeekReport, safe: Safe) =>
    report.habits === undefined ? undefined : habitText(report.habits.worst, safe),
  otherHabits: ({ habits }: WeekReport, safe: Safe): readonly string[] =>
    habits === undefined || habits.counted === 1
      ? []
      : [
          // Of two, the middle one is one of them.
          ...(habits.counted === 2
            ? []
            : [`In the middle of ${habits.counted}: ${habitText(habits.median, safe)}`]),
          `Least short: ${habitText(habits.best, safe)}`,
        ],
  comparison: comparisonText,
  exceptions: exceptionLines,
  threadHint: 'All numbers, the chart and the table are in the thread.',
  detailsTitle: 'Where it came from',
  slot: ({ slotName, classes, sets }: SlotWeek, safe: Safe) =>
    `${safe(slotName)}: ${classesText(classes)}, ${setsCount(sets)}`,
  patterns: ({ classesByPattern, trust }: WeekReport) => {
    const told = patterns.flatMap((pattern: Pattern) => {
      const classes = classesByPattern[pattern] ?? 0;
      return classes === 0 ? [] : [`${pattern} ${classes}`];
    });
    return told.length === 0
      ? undefined
      : `Patterns, by classes that had them, of ${trust.withPlan + trust.patternsOnly}: ${told.join(', ')}`;
  },
  quiet: (sayings: readonly Saying[]) =>
    `Left out of the first lines at a coach’s word: ${sayings.map(sayingName).join(', ')}`,
  chartTitle: 'Interval sets, first priority',
  chartSeries: 'sets',
  chartText: (bars: readonly { readonly name: string; readonly sets: number }[], leastSets: number) =>
    `${bars.map(({ name, sets }) => `${name} ${setsText(sets)}`).join(', ')}; at least ${leastSets} are wanted.`,
  chartAlt: (numbers: string) => `Bar chart of interval sets a muscle: ${numbers}`,
  chartLeast: (leastSets: number) => `at least ${leastSets}`,
  source:
    'At least 4 sets a muscle a week: Iversen VM et al. 2021. Two days or more a muscle group: WHO 2020. The counts are interval sets; the research counted hard sets.',
  tableColumns: ['muscle', 'priority', 'sets', 'days', 'seconds under tension'],
  tablePriority: (priority: MuscleWeek['priority']): string => priority,
  tableDay: (day: (typeof weekdays)[number]): string => day,
  tableTitle: (week: string) => `${weekName(week)}, the full table`,
  tableAsText: (title: string, csv: string) => `${title}\n\`\`\`\n${csv.trimEnd()}\n\`\`\``,
  ask: (saying: Saying) => `*${sayingName(saying)}* was said three Mondays running. Shall I go on saying it?`,
  askLead: 'For the head coach:',
  askGoOn: 'Go on',
  askStop: 'Leave it out',
  decided: (saying: Saying, goesOn: boolean) =>
    goesOn
      ? `*${sayingName(saying)}*: goes on. I ask again after three more Mondays.`
      : `*${sayingName(saying)}*: left out of the first lines until it was mended once.`,
  onlyCoachDecides: 'Only a head coach decides what the report goes on saying.',
  taughtHint: 'No plan is known. Reply here with its patterns: taught: squat, hinge, push, core',
  taughtCounted: (name: string, counted: readonly Pattern[], unknown: readonly string[]) =>
    `Counted for ${name}: ${counted.join(', ')}.${unknown.length === 0 ? '' : ` Not known as a pattern: ${unknown.join(', ')}.`}`,
  taughtHasPlan: (name: string) =>
    `${name} has a plan, which is counted. Mark it with the buttons under its question.`,
  taughtNoClass: 'I find no class of yours in these two weeks that has begun.',
  taughtUnclear: (unknown: readonly string[]) =>
    `I know none of these as a pattern: ${unknown.join(', ')}. For example: taught: squat, hinge, push, pull, core`,
  correction: correctionText,
  /** The whole report in short, for a notification or a screen reader. */
  short: shortText,
} as const;

function weekName(week: string): string {
  return `week ${Number(week.slice(6))}`;
}

/** `muscle:hamstrings` by its own name, a group with what it is short of. */
function sayingName(saying: Saying): string {
  const [kind = '', name = ''] = saying.split(':');
  return kind === 'group' ? `${name} on fewer than two days` : name;
}

/** How far to trust the numbers: `Plans for 14 of 22 classes, 3 assumed taught as planned`. */
function trustText({ classes, withPlan, assumed, patternsOnly }: Trust, toCome?: ToCome): string {
  const ahead =
    toCome === undefined || toCome.classes === 0
      ? []
      : [
          `${classesText(toCome.classes)} to come, ${toCome.withPlan === 0 ? 'none' : toCome.withPlan} with a plan`,
        ];
  if (classes === 0) return ahead[0] ?? 'No class was held and none is to come';
  return [
    [
      `Plans for ${withPlan} of ${classesText(classes)}`,
      ...(assumed === 0 ? [] : [`${assumed} assumed taught as planned`]),
      ...(patternsOnly === 0 ? [] : [`${patternsOnly} by patterns only`]),
      ...(withPlan === 0 || withPlan === classes ? [] : ['sets of the others are unknown, not zero']),
    ].join(', '),
    ...ahead,
  ].join('; ');
}

/** A line a muscle, most missing first, then one for all groups. */
function underTrainedLines(underTrained: readonly UnderTrained[], safe: Safe): readonly string[] {
  const muscles = underTrained.flatMap((under) => {
    if (under.kind === 'group') return [];
    const from = under.from.map(({ slotName, sets }) => `${safe(slotName)} ${setsText(sets)}`).join(', ');
    const had = under.range === 'none' ? 'no sets' : `${setsCount(under.sets)} (${from})`;
    return [`*${under.muscle}*: ${had}, ${setsText(under.missingSets)} short`];
  });
  const groups = underTrained.flatMap((under) =>
    under.kind === 'group' ? [`${under.group} ${under.days === 0 ? 'none' : under.days}`] : [],
  );
  return groups.length === 0 ? muscles : [...muscles, `*Under two days*: ${groups.join(', ')}`];
}

/** `Monday and Thursday: obliques 2 sets short, calves ½ set short, 1 more; back on fewer than two days`. */
function habitText({ name, short, groupsUnderTwoDays, veryHigh }: HabitWeek, safe: Safe): string {
  const missing = [
    ...short.slice(0, 3).map(({ muscle, missingSets }) => `${muscle} ${setsCount(missingSets)} short`),
    ...(short.length > 3 ? [`${short.length - 3} more short`] : []),
  ];
  const told = [
    ...(missing.length === 0 ? [] : [missing.join(', ')]),
    ...(groupsUnderTwoDays.length === 0 ? [] : [`${groupsUnderTwoDays.join(', ')} on fewer than two days`]),
    ...(veryHigh.length === 0 ? [] : [`very high: ${veryHigh.join(', ')}`]),
  ];
  return `${safe(name)}: ${told.length === 0 ? 'nothing missing' : told.join('; ')}`;
}

function comparisonText(comparison: WeekComparison): string {
  if (comparison.kind === 'unknown')
    return 'Not compared with the week before: no plans of one of the two are known';
  const { kind, missingBefore, missingNow, mended, fresh, withPlanBefore, withPlanNow } = comparison;
  const lead =
    kind === 'alike'
      ? `As the week before: ${setsCount(missingNow)} missing`
      : `${kind === 'better' ? 'Better' : 'Worse'} than the week before: ${setsCount(missingNow)} missing instead of ${setsText(missingBefore)}`;
  return [
    lead,
    ...(withPlanBefore === withPlanNow
      ? []
      : [`with plans for ${classesText(withPlanNow)}, before for ${withPlanBefore}`]),
    ...(mended.length === 0 ? [] : [`enough now: ${changesText(mended)}`]),
    ...(fresh.length === 0 ? [] : [`short now: ${changesText(fresh)}`]),
  ].join('; ');
}

function changesText(changes: readonly MuscleChange[]): string {
  return changes
    .map(({ muscle, before, now }) => `${muscle} ${setsText(before)} → ${setsText(now)}`)
    .join(', ');
}

function exceptionLines(exceptions: WeekExceptions, safe: Safe): readonly string[] {
  const { ranOver, cutShort, cancelled, notTaught, covered } = exceptions;
  const line = (name: string, slots: readonly string[]) =>
    slots.length === 0 ? [] : [`${name}: ${slots.map(safe).join(', ')}`];
  return [
    ...line('Ran over', ranOver),
    ...line('Cut short', cutShort),
    ...line('Cancelled', cancelled),
    ...line('Not taught', notTaught),
    ...line('Covered', covered),
  ];
}

function correctionText(
  slotName: string,
  cause: CorrectionCause,
  { trust, changed }: WeekCorrection,
): string {
  const told = changed.map(({ saying, was, now }) => {
    const [kind = '', name = ''] = saying.split(':');
    const amount = (value: number | undefined) =>
      value === undefined ? 'enough' : kind === 'group' ? daysText(value) : setsCount(value);
    return `${name} ${amount(was)} → ${amount(now)}`;
  });
  return [`Correction, since ${slotName} was ${cause}: ${trustText(trust)}.`, ...told].join('\n• ');
}

function shortText(report: WeekReport, comparison: WeekComparison, toCome: ToCome, safe: Safe): string {
  const under = underTrainedLines(report.underTrained, safe).map((line) => line.replaceAll('*', ''));
  const told =
    under.length === 0 ? weekWords.nothingUnderTrained(report) : `Under-trained: ${under.join('; ')}.`;
  const mend = report.mend === undefined ? [] : [`To mend it, ${weekWords.mend(report.mend, safe)}.`];
  const wish = report.wish === undefined ? [] : [`To mend it, ${weekWords.wish(report.wish, safe)}.`];
  const worst = weekWords.worstHabit(report, safe);
  const isBare = report.trust.classes === 0;
  return [
    `${weekWords.title(report.week)}. ${trustText(report.trust, toCome)}.`,
    ...(isBare ? [] : [told]),
    ...mend,
    ...wish,
    ...(worst === undefined ? [] : [`Regulars miss most: ${worst}.`]),
    ...(isBare ? [] : [`${comparisonText(comparison)}.`]),
    ...exceptionLines(report.exceptions, safe).map((line) => `${line}.`),
  ].join(' ');
}

function classesText(classes: number): string {
  return classes === 1 ? '1 class' : `${classes} classes`;
}

function setsCount(sets: number): string {
  return sets <= 1 && sets > 0 ? `${setsText(sets)} set` : `${setsText(sets)} sets`;
}

function daysText(days: number): string {
  return days === 1 ? '1 day' : `${days} days`;
}
