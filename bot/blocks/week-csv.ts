import { weekdays } from '../../domain/calendar/iso-week.ts';
import type { Settings } from '../../domain/settings.ts';
import { slotNameOf, type WeekClass } from '../../domain/week/week-class.ts';
import type { WeekReport } from '../../domain/week/week-report.ts';
import type { Words } from '../words/words.ts';

/** A cell that a spreadsheet would read as a formula begins with one of these. */
const startsFormula = /^[\s]*[=+\-@\t\r]/;

/** The whole week as CSV (RFC 4180): a muscle a row; sets, days, seconds, sets a day and sets a class. */
export function printWeekCsv(
  report: WeekReport,
  classes: readonly WeekClass[],
  settings: Settings,
  { catalogue, week }: Words,
): string {
  const counted = classes.filter(({ load = [] }) => load.length > 0);
  const head = [
    ...week.tableColumns,
    ...weekdays.map(week.tableDay),
    ...counted.map(({ scheduled }) => `${slotNameOf(scheduled, settings)} ${scheduled.startsAt.date}`),
  ];
  const rows = report.muscles.map(({ muscle, priority, sets, days, tensionSeconds, setsByDay }) => [
    catalogue.muscle(muscle),
    week.tablePriority(priority),
    sets,
    days,
    tensionSeconds,
    ...setsByDay,
    ...counted.map(({ load = [] }) => load.find((row) => row.muscle === muscle)?.sets ?? 0),
  ]);
  return [head, ...rows].map((row) => `${row.map(printCell).join(',')}\r\n`).join('');
}

/** Numbers as they are; text with a leading apostrophe where it would be run as a formula. */
function printCell(cell: string | number): string {
  if (typeof cell === 'number') return String(cell);
  const inert = startsFormula.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}
