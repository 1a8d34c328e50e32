import type { Settings } from '../settings.ts';
import { type JudgedClass, slotNameOf, wasHeld } from './week-class.ts';
import type { WeekExceptions } from './week-report.ts';

/** What of a week went otherwise than the timetable says; by slot, never by person. */
export function exceptionsOfWeek(judged: readonly JudgedClass[], settings: Settings): WeekExceptions {
  const slotsWhere = (holds: (one: JudgedClass) => boolean): readonly string[] => [
    ...new Set(judged.filter(holds).map(({ scheduled }) => slotNameOf(scheduled, settings))),
  ];
  const ended = (length: 'short' | 'over') =>
    slotsWhere((one) => wasHeld(one) && one.scheduled.outcome?.length === length);
  return {
    ranOver: ended('over'),
    cutShort: ended('short'),
    cancelled: slotsWhere(({ held }) => held === 'cancelled'),
    notTaught: slotsWhere(({ held }) => held === 'not taught'),
    covered: slotsWhere((one) => wasHeld(one) && isCovered(one, settings)),
  };
}

function isCovered({ scheduled: { slotId, instructorId } }: JudgedClass, { slots }: Settings): boolean {
  const usual = slots.find(({ id }) => id === slotId)?.instructorId;
  return usual !== undefined && usual !== instructorId;
}
