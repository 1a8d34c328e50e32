import type { InputBlock, ModalView } from '@slack/types';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Room } from '../../domain/settings.ts';
import { views } from '../ids.ts';
import type { ClassChange, ToldOfChange } from '../words/en/class-change-words.ts';
import type { Words } from '../words/words.ts';
import { printClassChange } from './class-change-value.ts';
import { printClassValue } from './class-value.ts';
import { section, sections } from './elements.ts';
import { inertText } from './escape.ts';
import { dateField, formView, plainText, selectField, timeField } from './form-parts.ts';

/** A new day, time or room for a class, or its cancellation; nothing happens before the next page. */
export function changeClassForm(scheduled: ScheduledClass, rooms: readonly Room[], words: Words): ModalView {
  const { startsAt, room } = scheduled;
  const { classChange, forms } = words;
  const choices = rooms.map(({ name }) => ({ value: name, label: name }));
  return formView(
    {
      callbackId: views.changeClass,
      title: classChange.title,
      submit: classChange.next,
      metadata: printClassValue(scheduled),
      blocks: [
        section('class', words.classes.named(scheduled, inertText)),
        whatField(words),
        dateField({ id: 'date', label: forms.date, value: startsAt.date, optional: true }),
        timeField({ id: 'time', label: forms.time, value: startsAt.time, optional: true }),
        ...(choices.length === 0
          ? []
          : [
              selectField({
                id: 'room',
                label: forms.room,
                hint: classChange.sameRoom,
                optional: true,
                choices,
                ...(room === undefined ? {} : { value: room }),
              }),
            ]),
        section('nothing-yet', classChange.nothingYet),
      ],
    },
    words,
  );
}

function whatField({ classChange }: Words): InputBlock {
  const options = (['move', 'cancel'] as const).map((each) => ({
    text: plainText(classChange[each]),
    value: each,
  }));
  const [move] = options;
  return {
    type: 'input',
    block_id: 'what',
    label: plainText(classChange.what),
    element: {
      type: 'radio_buttons',
      action_id: 'what',
      options,
      ...(move === undefined ? {} : { initial_option: move }),
    },
  };
}

/** What will be said and to whom, before it is. */
export function confirmChangeForm(
  scheduled: ScheduledClass,
  change: ClassChange,
  told: ToldOfChange,
  clashes: readonly string[],
  words: Words,
): ModalView {
  const { classChange } = words;
  return formView(
    {
      callbackId: views.confirmChange,
      title: classChange.confirmTitle,
      submit: classChange.submit(change),
      metadata: printClassChange(scheduled, change),
      blocks: [
        ...sections('change', [classChange.lead(scheduled, change, inertText), ...clashes]),
        ...sections('posted', [classChange.postedTitle, ...classChange.posted(change, told)]),
      ],
    },
    words,
  );
}
