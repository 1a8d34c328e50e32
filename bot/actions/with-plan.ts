import { type ButtonValue, readButtonValue } from '../blocks/button-value.ts';
import type { Changed } from '../flows/change-plan.ts';
import { type OpenPlan, openPlan } from '../flows/open-plan.ts';
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
    const value = readButtonValue(request.value);
    const open = value === undefined ? undefined : await openPlan(desk, value.plan);
    return value === undefined || open === undefined
      ? toYou({ text: desk.words.flow.buttonGone })
      : act(request, open, value, desk);
  };
}

export function toYou(message: Message): Reaction {
  return { answers: [{ kind: 'only to you', message }] };
}

/** Done changes show by themselves; a refusal is told to the person who asked. */
export function reactionOf(outcome: Changed | Stepped): Reaction {
  return outcome.kind === 'kept' ? toYou(outcome.message) : noReaction;
}
