import type { ScheduledClass, ZonedMoment } from '../../domain/calendar/scheduled-class.ts';
import { labelledLetters } from '../../domain/plan/labels.ts';
import type { Plan } from '../../domain/plan/plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { printClassValue } from './class-value.ts';
import { type ButtonFacts, buttons, section } from './elements.ts';

/** Opens the form in which a class is moved or cancelled. */
export function changeButton(scheduled: ScheduledClass, words: Words): ButtonFacts {
  return {
    action: actions.openChangeClass,
    label: words.classChange.openButton,
    value: printClassValue(scheduled),
  };
}

/** `move` alone under a plan: a letter of it, or its class with the form at hand. */
export function renderMoveWhat(plan: Plan, scheduled: ScheduledClass | undefined, words: Words): Message {
  const text = words.draft.moveWhat(labelledLetters(plan).map(({ label }) => label));
  const form = scheduled === undefined ? [] : [changeButton(scheduled, words)];
  return { text, blocks: [section('what', text), ...buttons('change', form)] };
}

/** Asks where a class moves to, with the form at hand. */
export function renderMoveWhere(scheduled: ScheduledClass, words: Words): Message {
  const text = words.classes.moveWhere;
  return { text, blocks: [section('where', text), ...buttons('change', [changeButton(scheduled, words)])] };
}

/** Two days fit what was said: one tap says which. */
export function renderMoveWhich(
  scheduled: ScheduledClass,
  moments: readonly ZonedMoment[],
  words: Words,
): Message {
  const text = words.classes.movesWhich;
  return {
    text,
    blocks: [
      section('which', text),
      ...buttons(
        'days',
        moments.map((each) => ({
          action: actions.chooseClass,
          label: words.when(each),
          value: printClassValue(scheduled, `move to ${each.date} ${each.time}`),
        })),
      ),
    ],
  };
}
