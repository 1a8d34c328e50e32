import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { printClassValue } from './class-value.ts';
import { buttons, section } from './elements.ts';

/** Several classes fit what was said: one tap says which. */
export function renderChoice(classes: readonly ScheduledClass[], said: string, words: Words): Message {
  return {
    text: words.classes.severalClasses,
    blocks: [
      section('which', words.classes.severalClasses),
      ...buttons(
        'classes',
        classes.map((scheduled) => ({
          action: actions.chooseClass,
          label: `${words.when(scheduled.startsAt)} ${scheduled.title ?? words.classes.untitled}`,
          value: printClassValue(scheduled, said.slice(0, 200)),
        })),
      ),
    ],
  };
}
