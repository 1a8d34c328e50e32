import { DateTime, IANAZone } from 'luxon';
import type { WallTime } from '../plan/plan.ts';
import type { ZonedMoment } from './scheduled-class.ts';

type ZonedWallTime = WallTime & { readonly zone: string };

/** Whether the runtime knows this zone of the IANA database, `Europe/Vienna`. Zones are checked at the edge. */
export function isKnownZone(zone: string): boolean {
  return IANAZone.isValidZone(zone);
}

/** Whether there is such a day `YYYY-MM-DD` and such a time of day `HH:MM`. */
export function isWallTime({ date, time }: WallTime): boolean {
  const isWritten = /^\d{4}-\d{2}-\d{2}$/.test(date) && /^\d{2}:\d{2}$/.test(time);
  return isWritten && DateTime.fromISO(`${date}T${time}`, { zone: 'UTC' }).isValid;
}

/**
 * The instant (UTC, ISO 8601) of a wall time `YYYY-MM-DD`, `HH:MM` in a zone, by the rule of RFC 5545,
 * 3.3.5: of a time that happens twice the first; a time that never happens is read with the offset before
 * the gap. The same whatever today's date is. Throws a RangeError for an unknown zone or an impossible time.
 */
export function instantOf({ date, time, zone }: ZonedWallTime): string {
  if (!IANAZone.create(zone).isValid) throw new RangeError(`unknown time zone "${zone}"`);
  const read = DateTime.fromISO(`${date}T${time}`, { zone });
  if (!read.isValid) throw new RangeError(`no such wall time: "${date} ${time}"`);
  return isoOf(DateTime.min(...read.getPossibleOffsets()) ?? read);
}

/** Wall time, zone and computed instant together. */
export function zonedMoment({ date, time }: WallTime, zone: string): ZonedMoment {
  return { date, time, zone, instant: instantOf({ date, time, zone }) };
}

/** The instant at which the day of an instant starts in a zone. */
export function startOfDay(instant: string, zone: string): string {
  return instantOf({ date: wallTimeOf(instant, zone).date, time: '00:00', zone });
}

/** Whether text is a date that the calendar has, `YYYY-MM-DD`. */
export function isCalendarDate(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && DateTime.fromISO(text, { zone: 'utc' }).isValid;
}

/** The wall time of an instant in a zone, to the minute. */
export function wallTimeOf(instant: string, zone: string): WallTime {
  const there = inZone(instant, zone);
  return { date: there.toFormat('yyyy-MM-dd'), time: there.toFormat('HH:mm') };
}

/** The instant `seconds` later. */
export function instantAfter(instant: string, seconds: number): string {
  return new Date(Date.parse(instant) + seconds * 1000).toISOString();
}

/** An instant as calendar time in a zone; for `calendar/` and `week/` only. */
export function inZone(instant: string, zone: string): DateTime<true> {
  const there = DateTime.fromISO(instant, { zone });
  if (!there.isValid) throw new RangeError(`no such moment: "${instant}" in "${zone}"`);
  return there;
}

function isoOf(moment: DateTime): string {
  return new Date(moment.toMillis()).toISOString();
}
