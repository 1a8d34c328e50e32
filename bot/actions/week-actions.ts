import { decideSaying } from '../flows/decide-saying.ts';
import { mendFromReport } from '../flows/mend-from-report.ts';
import { type ActionRequest, type Handler, noReaction } from '../handling.ts';
import { toYou, withPlan } from './with-plan.ts';

/** The one edit of a week's report, for the plan's author or a head coach. */
export const onApplyWeekEdit: Handler<ActionRequest> = withPlan(async ({ personId }, open, value, desk) => {
  const { edit, version, on: reportKey } = value;
  if (edit === undefined || reportKey === undefined) return toYou({ text: desk.words.flow.buttonGone });
  const outcome = await mendFromReport(desk, open, personId, { edit, version, reportKey });
  return outcome.kind === 'kept' ? toYou(outcome.message) : noReaction;
});

export const onGoOnSaying: Handler<ActionRequest> = decideWith(true);

export const onStopSaying: Handler<ActionRequest> = decideWith(false);

function decideWith(goesOn: boolean): Handler<ActionRequest> {
  return async ({ value, personId }, desk) => {
    const [, week, saying] = /^(\d{4}-W\d{2})\|(.{1,80})$/.exec(value) ?? [];
    if (week === undefined || saying === undefined) return toYou({ text: desk.words.flow.buttonGone });
    const told = await decideSaying(desk, personId, { week, saying, goesOn });
    return told === undefined ? noReaction : toYou(told);
  };
}
