import type { ComingWeek } from '../../../domain/week/coming-week.ts';
import type { PlannedAndTaught } from '../../../domain/week/planned-and-taught.ts';
import type { RecoveryConflict } from '../../../domain/week/recovery-conflicts.ts';
import type { StrainOfWeek } from '../../../domain/week/strain-of-week.ts';
import type { MuscleWeek } from '../../../domain/week/week-report.ts';
import { setsText } from './card-words.ts';

type Safe = (typed: string) => string;

/** The coach's own message beside the week's report: numbers, no score of anyone. */
export const coachWeekWords = {
  title: (week: string) => `Week ${Number(week.slice(6))}, for the head coach`,
  short: (week: string, trust: string) =>
    `Week ${Number(week.slice(6))}, for the head coach: ${trust}. Sets, days, minutes, trend, session load and the coming week are below.`,
  columns: ['muscle', 'sets', 'days', 'min'],
  weekColumn: (week: string) => `W${week.slice(6)}`,
  cells: ({ muscle, sets, days, tensionSeconds }: MuscleWeek): readonly string[] => [
    muscle,
    setsText(sets),
    String(days),
    String(Math.round(tensionSeconds / 60)),
  ],
  trendCell: (sets: number | undefined) => (sets === undefined ? '–' : setsText(sets)),
  tableLead: 'Sets, days and minutes under tension this week; then sets of the last four weeks.',
  conflictsTitle: 'Under 48 hours apart',
  conflict: ({ first, second, hours, muscles }: RecoveryConflict, safe: Safe) =>
    `${safe(first)}, then ${safe(second)} ${hours} h later: ${muscles.join(', ')}`,
  noConflicts: (sets: number) =>
    `No two classes of one habit trained a muscle with ${sets} sets or more within 48 hours.`,
  conflictsSource: '48 hours between: Garber CE et al. 2011.',
  strainTitle: 'Session load, estimated',
  strain: strainText,
  noStrain: 'No class has an estimate of how hard it was, so there is no session load.',
  strainSource:
    'For someone who came to every class; no score of anyone. Load is the estimate × minutes (Foster 2001); monotony is the mean ÷ population SD of seven days, strain is load × monotony (Foster 1998).',
  plannedTitle: 'Planned and taught',
  planned: plannedText,
  comingTitle: (week: string) => `Coming, week ${Number(week.slice(6))}, as approved so far`,
  coming: comingLines,
} as const;

function strainText({ load, monotony, strain, told, held, byDay }: StrainOfWeek): string {
  const days = byDay.map((day) => Math.round(day)).join(', ');
  const rest =
    monotony === undefined || strain === undefined
      ? 'all days alike, so there is no monotony'
      : `monotony ${monotony.toFixed(2)}, training strain ${strain}`;
  return `${Math.round(load)}, ${rest}. Monday to Sunday: ${days}. Estimates for ${told} of ${held} classes.`;
}

function plannedText(
  { planned, taught, plannedSets, taughtSets, withChanges }: PlannedAndTaught,
  safe: Safe,
): string {
  const changes = withChanges.length === 0 ? [] : [`with changes: ${withChanges.map(safe).join(', ')}`];
  return [
    `${taught} of ${planned} planned classes taught`,
    `${setsText(taughtSets)} of ${setsText(plannedSets)} planned sets`,
    ...changes,
  ].join('; ');
}

function comingLines({ classes, approved, open, short }: ComingWeek, safe: Safe): readonly string[] {
  const standing = {
    approved: 'approved',
    waits: 'waits for approval',
    draft: 'draft',
    'no plan': 'no plan',
  };
  return [
    `${approved} of ${classes} classes approved`,
    ...open.map((each) => `${safe(each.slotName)}: ${standing[each.standing]}`),
    ...(short.length === 0
      ? []
      : [`Short so far: ${short.map(({ muscle, sets }) => `${muscle} ${setsText(sets)}`).join(', ')}`]),
  ];
}
