import { type IsoWeek, weekAfter } from '../calendar/iso-week.ts';
import type { UnderTrained, WeekReport } from './week-report.ts';

/** What a report says of one muscle or group, by name: `muscle:hamstrings`, `group:back`. */
export type Saying = string;

/** The sayings of a week's report, told or kept quiet. */
export type SaidWeek = { readonly week: IsoWeek; readonly sayings: readonly Saying[] };

/** A coach's answer to *go on saying it?*, given to the report on `week`. */
export type SayingDecision = { readonly saying: Saying; readonly goesOn: boolean; readonly week: IsoWeek };

/** Said this often running, a report asks whether to go on saying it. Common practice, no published source. */
const mondaysToAsk = 3;

export function sayingOf(under: UnderTrained): Saying {
  return under.kind === 'muscle' ? `muscle:${under.muscle}` : `group:${under.group}`;
}

export function sayingsOf({ underTrained }: WeekReport): readonly Saying[] {
  return underTrained.map(sayingOf);
}

/**
 * How a saying of the report on `week` stands. One that a coach stopped stays quiet as long as it holds each
 * week; once it was mended and comes back, it is said again.
 */
export function standingOfSaying(
  saying: Saying,
  week: IsoWeek,
  past: readonly SaidWeek[],
  decisions: readonly SayingDecision[],
): 'said' | 'asked' | 'quiet' {
  const decision = decisions.find((each) => each.saying === saying && each.week < week);
  const running = weeksRunning(saying, week, past);
  const sinceDecision = decision === undefined ? running : running.filter((each) => each > decision.week);
  const neverMended = decision !== undefined && running.includes(decision.week);
  if (decision?.goesOn === false && neverMended) return 'quiet';
  return sinceDecision.length % mondaysToAsk === 0 ? 'asked' : 'said';
}

/** The weeks up to this one that were said without a gap, this one included. */
function weeksRunning(saying: Saying, week: IsoWeek, past: readonly SaidWeek[]): readonly IsoWeek[] {
  const running = [week];
  for (let before = weekAfter(week, -1); holds(saying, before, past); before = weekAfter(before, -1))
    running.push(before);
  return running;
}

function holds(saying: Saying, week: IsoWeek, past: readonly SaidWeek[]): boolean {
  return past.some((each) => each.week === week && each.sayings.includes(saying));
}
