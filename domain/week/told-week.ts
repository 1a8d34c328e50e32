import type { ScheduledClass } from '../calendar/scheduled-class.ts';
import { type Saying, sayingOf } from './sayings.ts';
import type { Trust, WeekExceptions, WeekReport } from './week-report.ts';

/** What a report told, as far as a class marked afterwards can change it. `amount`: sets, or days of a group. */
export type ToldWeek = {
  readonly trust: Trust;
  readonly said: readonly { readonly saying: Saying; readonly amount: number }[];
  readonly exceptions: WeekExceptions;
};

/** What is otherwise than a report told; `was` and `now` are amounts, absent where it was or is not short. */
export type WeekCorrection = {
  readonly trust: Trust;
  readonly changed: readonly { readonly saying: Saying; readonly was?: number; readonly now?: number }[];
};

export function toldWeek({ trust, underTrained, exceptions }: WeekReport): ToldWeek {
  return {
    trust,
    said: underTrained.map((under) => ({
      saying: sayingOf(under),
      amount: under.kind === 'muscle' ? under.sets : under.days,
    })),
    exceptions,
  };
}

/** Undefined where everything stands as told. */
export function correctionOf(was: ToldWeek, now: ToldWeek): WeekCorrection | undefined {
  if (JSON.stringify(was) === JSON.stringify(now)) return undefined;
  const sayings = [...new Set([...was.said, ...now.said].map(({ saying }) => saying))];
  const changed = sayings.flatMap((saying) => {
    const [before, after] = [amountIn(was, saying), amountIn(now, saying)];
    return before === after
      ? []
      : [
          {
            saying,
            ...(before === undefined ? {} : { was: before }),
            ...(after === undefined ? {} : { now: after }),
          },
        ];
  });
  return { trust: now.trust, changed };
}

/** What was done to a class that a report tells of. */
export type CorrectionCause = 'marked' | 'cancelled' | 'put on again' | 'moved' | 'covered';

export function correctionCause(before: ScheduledClass, after: ScheduledClass): CorrectionCause {
  if (after.state === 'cancelled') return 'cancelled';
  if (before.state === 'cancelled') return 'put on again';
  if (before.startsAt.instant !== after.startsAt.instant) return 'moved';
  return before.instructorId === after.instructorId ? 'marked' : 'covered';
}

function amountIn({ said }: ToldWeek, saying: Saying): number | undefined {
  return said.find((each) => each.saying === saying)?.amount;
}
