import type { Settings } from '../settings.ts';
import { type ClassToCome, isOn } from './facts-of-class.ts';
import { instantAfter, instantOf, inZone, wallTimeOf } from './wall-time.ts';

/** The evening before `date`: what the team is told of that day's classes. */
export type DigestMoment = {
  readonly kind: 'digest';
  /** `YYYY-MM-DD` in the studio's zone. */
  readonly date: string;
  readonly key: string;
  readonly at: string;
  /** The start of the day's last class. */
  readonly usefulUntil: string;
};

export function digestKey(date: string): string {
  return `digest:${date}`;
}

/** One for each day that has a class which is held; none where the studio wants none. */
export function digestMoments(classes: readonly ClassToCome[], settings: Settings): readonly DigestMoment[] {
  if (settings.digestTime === 'off') return [];
  const lastStart = new Map<string, string>();
  for (const { scheduled } of classes) {
    if (!isOn(scheduled)) continue;
    const { date } = wallTimeOf(scheduled.startsAt.instant, settings.zone);
    const standing = lastStart.get(date);
    const { instant } = scheduled.startsAt;
    if (standing === undefined || Date.parse(standing) < Date.parse(instant)) lastStart.set(date, instant);
  }
  return [...lastStart].map(([date, usefulUntil]) => ({
    kind: 'digest',
    date,
    key: digestKey(date),
    at: digestInstant(date, settings),
    usefulUntil,
  }));
}

/** The classes of a day, cancelled ones too, in order of start. */
export function classesOfDay(
  classes: readonly ClassToCome[],
  date: string,
  zone: string,
): readonly ClassToCome[] {
  return classes
    .filter(({ scheduled }) => wallTimeOf(scheduled.startsAt.instant, zone).date === date)
    .toSorted((a, b) => Date.parse(a.scheduled.startsAt.instant) - Date.parse(b.scheduled.startsAt.instant));
}

/** The instant at which a day ends in the zone. */
export function endOfDay(date: string, zone: string): string {
  return instantOf({ date: dayAfter(date, 1), time: '00:00', zone });
}

function digestInstant(date: string, { digestTime, zone }: Settings): string {
  return instantOf({ date: dayAfter(date, -1), time: digestTime, zone });
}

function dayAfter(date: string, days: number): string {
  const noon = `${date}T12:00:00.000Z`;
  return inZone(instantAfter(noon, days * 86_400), 'utc').toFormat('yyyy-MM-dd');
}
