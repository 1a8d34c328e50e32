import { whyNotCoach, whyNotTheirs } from '../../domain/plan/decide-step.ts';
import type { ButtonValue } from '../blocks/button-value.ts';
import type { Changed } from '../flows/change-plan.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import { planOfValue } from '../flows/plan-of-value.ts';
import type { Stepped } from '../flows/review-plan.ts';
import {
  type ActionRequest,
  type Desk,
  type Handler,
  type Message,
  noReaction,
  type Reaction,
} from '../handling.ts';

type OnPlan = (request: ActionRequest, open: OpenPlan, value: ButtonValue, desk: Desk) => Promise<Reaction>;

/** A button that stands for a plan: its value is read, its plan found, or the person is told. */
export function withPlan(act: OnPlan): Handler<ActionRequest> {
  return async (request, desk) => {
    const found = await planOfValue(desk, request.value);
    return found === undefined
      ? toYou({ text: desk.words.flow.buttonGone })
      : act(request, found.open, found.value, desk);
  };
}

/** The same for a form that a plan's author or a head coach hands in: nobody else fills it in for nothing. */
export function withTheirPlan(act: OnPlan): Handler<ActionRequest> {
  return withPlan(async (request, open, value, desk) => {
    const refusal = whyNotTheirs(open.record, request.personId, desk.settings);
    return refusal === undefined
      ? act(request, open, value, desk)
      : toYou({ text: desk.words.refusal(refusal) });
  });
}

/** The same for a form that a head coach hands in. */
export function withReviewedPlan(act: OnPlan): Handler<ActionRequest> {
  return withPlan(async (request, open, value, desk) => {
    const refusal = whyNotCoach(request.personId, desk.settings);
    return refusal === undefined
      ? act(request, open, value, desk)
      : toYou({ text: desk.words.refusal(refusal) });
  });
}

export function toYou(message: Message): Reaction {
  return { answers: [{ kind: 'only to you', message }] };
}

/** Done changes show by themselves; a refusal is told to the person who asked. */
export function reactionOf(outcome: Changed | Stepped): Reaction {
  return outcome.kind === 'kept' ? toYou(outcome.message) : noReaction;
}
