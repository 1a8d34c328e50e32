import { z } from 'zod';
import type { FormValues } from '../handling.ts';
import { personId, placeId, timeOfDay } from './ids.ts';

const option = z.object({ value: z.string() });

/** What a person chose or typed in one element; every element gives one of these fields. */
export const elementValue = z.object({
  value: z.string().nullish(),
  selected_option: option.nullish(),
  selected_options: z.array(option).nullish(),
  selected_date: z.iso.date().nullish(),
  selected_time: timeOfDay.nullish(),
  selected_user: personId.nullish(),
  selected_users: z.array(personId).nullish(),
  selected_channel: placeId.nullish(),
  selected_conversation: placeId.nullish(),
});

export const formState = z.object({
  values: z.record(z.string(), z.record(z.string(), elementValue)),
});

/** Text or a choice; several choices as a list; nothing as absent. */
export function chosenIn(element: z.infer<typeof elementValue>): string | readonly string[] | undefined {
  return (
    element.selected_options?.map(({ value }) => value) ??
    element.selected_users ??
    element.selected_option?.value ??
    element.selected_date ??
    element.selected_time ??
    element.selected_user ??
    element.selected_channel ??
    element.selected_conversation ??
    element.value ??
    undefined
  );
}

/** By block id; a block holds one element. */
export function readFormValues(state: z.infer<typeof formState> | undefined): FormValues {
  return Object.fromEntries(
    Object.entries(state?.values ?? {}).map(([blockId, elements]) => {
      const [element] = Object.values(elements);
      return [blockId, element === undefined ? undefined : chosenIn(element)];
    }),
  );
}
