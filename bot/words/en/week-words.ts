import type {
  DoseRange,
  HabitWeek,
  MuscleWeek,
  SlotWeek,
  Trust,
  UnderTrained,
  WeekMend,
  WeekReport,
} from '../../../domain/week/week-report.ts';
import { setsText } from './card-words.ts';

/** What makes typed text inert where it is shown. */
type Safe = (typed: string) => string;

/** The week's report. Told by slot, never by instructor; numbers are interval sets. */
export const weekWords = {
  title: (week: string) => `Week ${week.slice(6)}, ${week.slice(0, 4)}`,
  late: 'This report comes late.',
  trust: trustText,
  underTrainedTitle: 'Under-trained',
  underTrained: underTrainedText,
  nothingUnderTrained: (report: WeekReport): string =>
    report.trust.withPlan === 0
      ? 'No plans of this week are known, so nothing can be said of its load.'
      : 'Nothing under-trained: every first-priority muscle had its sets, every group its two days.',
  mend: (mend: WeekMend, safe: Safe) =>
    `One thing to do: ${safe(mend.edit)} in ${safe(mend.slotName)}, for more ${mend.muscle}.`,
  mendButton: 'Apply this edit',
  slot: ({ slotName, classes, sets }: SlotWeek, safe: Safe) =>
    `${safe(slotName)}: ${classesText(classes)}, ${setsCount(sets)}`,
  muscle: muscleText,
  habits: habitsText,
  chartTitle: 'Interval sets a muscle, first priority',
  chartText: (bars: readonly { readonly muscle: string; readonly sets: number }[], leastSets: number) =>
    `${bars.map(({ muscle, sets }) => `${muscle} ${setsText(sets)}`).join(', ')}; at least ${leastSets} are wanted.`,
  source:
    'At least 4 sets a muscle a week: Iversen VM et al. 2021. Two days or more a muscle group: WHO 2020. The counts are interval sets; the research counted hard sets.',
  /** The whole report in short, for a notification or a screen reader. */
  short: shortText,
} as const;

/** How far to trust the numbers: `plans for 14 of 22 classes, 3 assumed`. */
function trustText({ classes, withPlan, assumed, patternsOnly, cancelled, notTaught }: Trust): string {
  return [
    `plans for ${withPlan} of ${classesText(classes)}`,
    ...(assumed === 0 ? [] : [`${assumed} assumed taught as planned`]),
    ...(patternsOnly === 0 ? [] : [`${patternsOnly} by patterns only`]),
    ...(cancelled === 0 ? [] : [`${cancelled} cancelled`]),
    ...(notTaught === 0 ? [] : [`${notTaught} not taught`]),
  ].join(', ');
}

function underTrainedText(under: UnderTrained, safe: Safe): string {
  switch (under.kind) {
    case 'muscle': {
      const from = under.from.map(({ slotName, sets }) => `${safe(slotName)} ${setsText(sets)}`).join(', ');
      const had = under.range === 'none' ? 'no sets' : `${setsCount(under.sets)} (${from})`;
      return `${under.muscle}: ${had}, ${setsText(under.missingSets)} short`;
    }
    case 'group':
      return `${under.group}: ${daysText(under.days)}, two are wanted`;
  }
}

function muscleText({ muscle, sets, days, range, tensionSeconds }: MuscleWeek): string {
  const minutes = `${Math.round(tensionSeconds / 60)} min under tension`;
  const told = saidOfStudio(range) ? `, ${range}` : '';
  return `${muscle}: ${setsCount(sets)} on ${daysText(days)}, ${minutes}${told}`;
}

/** The upper ranges are doses of one person: the studio's total is never called high. */
function saidOfStudio(range: DoseRange): boolean {
  return range === 'none' || range === 'low';
}

function habitsText({ habits }: WeekReport, safe: Safe): readonly string[] {
  if (habits === undefined) return [];
  const { counted, worst, median, best } = habits;
  if (counted === 1) return [`Who comes to ${habitText(worst, safe)}`];
  return [
    `Of ${counted} slot habits, left shortest: ${habitText(worst, safe)}`,
    `In the middle: ${habitText(median, safe)}`,
    `Least short: ${habitText(best, safe)}`,
  ];
}

function habitText({ name, short, groupsUnderTwoDays, veryHigh }: HabitWeek, safe: Safe): string {
  const missing = short
    .slice(0, 3)
    .map(({ muscle, missingSets }) => `${muscle} ${setsText(missingSets)} short`);
  const more = short.length > 3 ? [`${short.length - 3} more`] : [];
  const days = groupsUnderTwoDays.length === 0 ? [] : [`under two days: ${groupsUnderTwoDays.join(', ')}`];
  const high = veryHigh.length === 0 ? [] : [`very high: ${veryHigh.join(', ')}`];
  const told = [...missing, ...more, ...days, ...high];
  return `${safe(name)}: ${told.length === 0 ? 'nothing missing' : told.join(', ')}`;
}

function shortText(report: WeekReport, safe: Safe): string {
  const under = report.underTrained.map((each) => underTrainedText(each, safe));
  const told =
    under.length === 0 ? weekWords.nothingUnderTrained(report) : `Under-trained: ${under.join('; ')}.`;
  const mend = report.mend === undefined ? [] : [weekWords.mend(report.mend, safe)];
  return [`${weekWords.title(report.week)}, ${trustText(report.trust)}.`, told, ...mend].join(' ');
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
