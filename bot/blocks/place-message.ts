import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { printClassValue } from './class-value.ts';
import { planValue, titleOf } from './draft-card.ts';
import { buttons, section } from './elements.ts';

/** A class, and the plan it has already. */
export type PlaceTaken = { readonly scheduled: ScheduledClass; readonly other: OpenPlan };

/** In one line: which class has which plan, and how far that is. */
export function placeLine({ scheduled, other }: PlaceTaken, words: Words): string {
  const { state, approvedVersion } = other.record;
  return words.place.has(
    words.when(scheduled.startsAt),
    titleOf(other.version.plan, words),
    words.state(state, approvedVersion),
  );
}

/** A class has one plan: which is it to be? */
export function renderPlaceTaken(open: OpenPlan, taken: PlaceTaken, words: Words): Message {
  const { place } = words;
  const text = `${placeLine(taken, words)} ${place.notYet(titleOf(open.version.plan, words))}`;
  return {
    text,
    blocks: [
      section('place', text),
      ...buttons('place-how', [
        {
          action: actions.takePlace,
          label: place.takeButton,
          value: printClassValue(taken.scheduled, `${open.record.id} ${taken.other.record.id}`),
        },
        { action: actions.openSchedule, label: place.otherTimeButton, value: planValue(open) },
      ]),
    ],
  };
}

/** The plan that takes the place, and the one that stands there; empty where it is neither. */
export function readPlaceChoice(choice: string): { readonly planId: string; readonly otherId: string } {
  const [planId = '', otherId = ''] = choice.split(' ');
  return { planId, otherId };
}
