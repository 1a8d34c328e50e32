import { type ClassToCome, endOf, isOn } from './facts-of-class.ts';

/** How soon after a class another must start for kit to stay out: common practice, no published source. */
const soonMilliseconds = 3_600_000;

/** The class that follows in the same room within the hour, where one does. */
export function nextInRoom(
  { scheduled }: ClassToCome,
  classes: readonly ClassToCome[],
): ClassToCome | undefined {
  const ends = Date.parse(endOf(scheduled));
  const after = classes
    .filter(({ scheduled: other }) => {
      const wait = Date.parse(other.startsAt.instant) - ends;
      return (
        other.id !== scheduled.id &&
        scheduled.room !== undefined &&
        other.room === scheduled.room &&
        isOn(other) &&
        wait >= 0 &&
        wait <= soonMilliseconds
      );
    })
    .toSorted((a, b) => Date.parse(a.scheduled.startsAt.instant) - Date.parse(b.scheduled.startsAt.instant));
  return after[0];
}
