import type { IsoWeek } from '../../domain/calendar/iso-week.ts';
import { type Saying, standingOfSaying } from '../../domain/week/sayings.ts';
import type { Desk } from '../handling.ts';

/** How far back a saying is followed, in reports. */
const reportsKept = 60;

export type SayingsOfWeek = {
  /** Under-trained, but kept out of the first lines. */
  readonly quiet: readonly Saying[];
  /** Said so often running that the report asks whether to go on. */
  readonly asked: readonly Saying[];
};

/** How the sayings of a week's report stand, by earlier reports and what coaches answered to them. */
export async function sayingsOfWeek(
  { stores, studioId }: Desk,
  week: IsoWeek,
  sayings: readonly Saying[],
): Promise<SayingsOfWeek> {
  const past = await stores.weekReports.listBefore(studioId, week, reportsKept);
  const decisions = await stores.weekReports.listDecisions(studioId);
  const where = (wanted: 'quiet' | 'asked') =>
    sayings.filter((saying) => standingOfSaying(saying, week, past, decisions) === wanted);
  return { quiet: where('quiet'), asked: where('asked') };
}
