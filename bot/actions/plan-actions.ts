import { wallTimeOf } from '../../domain/calendar/wall-time.ts';
import { keepText } from '../../domain/shorthand/keep-text.ts';
import { printButtonValue } from '../blocks/button-value.ts';
import { findingsView } from '../blocks/findings-view.ts';
import { askChangesForm, readingView, scheduleForm } from '../blocks/forms.ts';
import { musclesLines } from '../blocks/muscles-lines.ts';
import { timelineLines } from '../blocks/timeline-lines.ts';
import { optionsSheetLines } from '../flows/answer-asks.ts';
import { applyEdit, rewrite, undo } from '../flows/change-plan.ts';
import { nextSlotWithoutPlan } from '../flows/next-slot-without-plan.ts';
import { approve, sendForReview, withdraw } from '../flows/review-plan.ts';
import type { ActionRequest, Handler } from '../handling.ts';
import { reactionOf, toYou, withPlan, withReviewedPlan, withTheirPlan } from './with-plan.ts';

/** An edit that a card, a finding or a fit proposed. */
export const onApplyEdit: Handler<ActionRequest> = withPlan(async (request, open, value, desk) => {
  if (value.edit === undefined) return toYou({ text: desk.words.flow.buttonGone });
  const outcome = await applyEdit(desk, open, request.personId, value.edit, value.version);
  if (request.view === undefined || outcome.kind === 'kept') return reactionOf(outcome);
  return {
    answers: [{ kind: 'update view', viewId: request.view.id, view: findingsView(outcome.open, desk) }],
  };
});

/** A known name in the place of words that could not be read. */
export const onChooseMove: Handler<ActionRequest> = withPlan(async (request, open, value, desk) => {
  const { at, name, version } = value;
  if (at === undefined || name === undefined) return toYou({ text: desk.words.flow.buttonGone });
  if (version !== open.record.currentVersion)
    return toYou({ text: desk.words.flow.madeOnEarlierVersion(open.record.currentVersion) });
  const text = keepText(open.version.text);
  const fixed = text.slice(0, at[0]) + name + text.slice(at[1]);
  return reactionOf(await rewrite(desk, open, request.personId, fixed, { adds: 'where lines follow' }));
});

/** Undoes the change it stands under; a later one is not undone by it. */
export const onUndo: Handler<ActionRequest> = withPlan(async ({ personId }, open, { version }, desk) => {
  const { currentVersion } = open.record;
  if (version !== currentVersion)
    return toYou({ text: desk.words.flow.madeOnEarlierVersion(currentVersion) });
  return reactionOf(await undo(desk, open, personId));
});

export const onTimeline: Handler<ActionRequest> = withPlan(async ({ triggerId }, open, _value, desk) => ({
  answers: [
    {
      kind: 'open view',
      triggerId,
      view: readingView(desk.words.card.buttons.timeline, timelineLines(open, desk), desk.words),
    },
  ],
}));

export const onAllFindings: Handler<ActionRequest> = withPlan(async ({ triggerId }, open, _value, desk) => ({
  answers: [{ kind: 'open view', triggerId, view: findingsView(open, desk) }],
}));

export const onMuscles: Handler<ActionRequest> = withPlan(async ({ triggerId }, open, _value, desk) => ({
  answers: [
    {
      kind: 'open view',
      triggerId,
      view: readingView(desk.words.card.buttons.muscles, musclesLines(open, desk), desk.words),
    },
  ],
}));

/** What someone does who needs options, limit by limit. */
export const onOptions: Handler<ActionRequest> = withPlan(async ({ triggerId }, open, _value, desk) => ({
  answers: [
    {
      kind: 'open view',
      triggerId,
      view: readingView(desk.words.asks.optionsButton, await optionsSheetLines(desk, open), desk.words),
    },
  ],
}));

export const onOpenSchedule: Handler<ActionRequest> = withTheirPlan(
  async ({ triggerId }, open, _value, desk) => {
    const facts = open.version.plan?.facts;
    const offered =
      open.scheduled === undefined
        ? await nextSlotWithoutPlan(desk, open.record.authorId, facts?.room)
        : undefined;
    const planned = open.scheduled ?? offered;
    const { date, time } = planned?.startsAt ?? wallTimeOf(desk.now, desk.settings.zone);
    const room = planned?.room ?? facts?.room;
    const people = open.scheduled?.people ?? facts?.people ?? offered?.people;
    const known = {
      date,
      ...(planned === undefined ? {} : { time }),
      ...(offered === undefined ? {} : { offered: offered.title ?? '' }),
      ...(room === undefined ? {} : { room }),
      ...(people === undefined ? {} : { people }),
    };
    const metadata = printButtonValue({ plan: open.record.id, version: open.record.currentVersion });
    return {
      answers: [
        {
          kind: 'open view',
          triggerId,
          view: scheduleForm(metadata, known, desk.settings.rooms, desk.words),
        },
      ],
    };
  },
);

export const onSendForReview: Handler<ActionRequest> = withPlan(
  async ({ personId }, open, { version }, desk) =>
    reactionOf(await sendForReview(desk, open, personId, version)),
);

export const onWithdraw: Handler<ActionRequest> = withPlan(async ({ personId }, open, _value, desk) =>
  reactionOf(await withdraw(desk, open, personId)),
);

export const onApprove: Handler<ActionRequest> = withPlan(async ({ personId }, open, { version }, desk) =>
  reactionOf(await approve(desk, open, personId, version)),
);

export const onOpenAskChanges: Handler<ActionRequest> = withReviewedPlan(
  async ({ triggerId }, open, { version }, desk) => ({
    answers: [
      {
        kind: 'open view',
        triggerId,
        view: askChangesForm(printButtonValue({ plan: open.record.id, version }), desk.words),
      },
    ],
  }),
);
