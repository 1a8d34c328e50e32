import type { AcceptedBlock } from './accepted-blocks.ts';
import type { AcceptedElement, AcceptedOption } from './accepted-elements.ts';

/** What a person filled in, by block and element: a text, a chosen value, or the chosen values of a list. */
export type FieldValue = string | readonly string[];
export type FormValues = Readonly<Record<string, Readonly<Record<string, FieldValue>>>>;

type HasValue = { readonly value: string };
type Choices<T extends HasValue> = {
  readonly options?: readonly T[] | undefined;
  readonly option_groups?: readonly { readonly options: readonly T[] }[] | undefined;
};

/** Every option of an element, with its groups laid flat. */
export const optionsOf = <T extends HasValue>(element: Choices<T>): readonly T[] =>
  element.options ?? (element.option_groups ?? []).flatMap((group) => group.options);

/** The elements of a block that a person can act on or fill in. */
export const elementsOf = (block: AcceptedBlock): readonly AcceptedElement[] => {
  switch (block.type) {
    case 'section':
      return block.accessory === undefined ? [] : [block.accessory];
    case 'actions':
      return block.elements;
    case 'input':
      return [block.element];
    default:
      return [];
  }
};

/** What an element holds before anyone touches it; undefined for one that holds nothing. */
export const initialValueOf = (element: AcceptedElement): FieldValue | undefined => {
  switch (element.type) {
    case 'plain_text_input':
    case 'number_input':
      return element.initial_value ?? '';
    case 'datepicker':
      return element.initial_date ?? '';
    case 'timepicker':
      return element.initial_time ?? '';
    case 'users_select':
      return element.initial_user ?? '';
    case 'conversations_select':
      return element.initial_conversation ?? '';
    case 'multi_users_select':
      return element.initial_users ?? [];
    case 'static_select':
    case 'radio_buttons':
      return element.initial_option?.value ?? '';
    case 'multi_static_select':
    case 'checkboxes':
      return (element.initial_options ?? []).map(({ value }) => value);
    case 'button':
    case 'overflow':
    case 'image':
      return undefined;
  }
};

const one = (value: FieldValue): string | undefined =>
  typeof value === 'string' && value !== '' ? value : undefined;
const many = (value: FieldValue): readonly string[] => (typeof value === 'string' ? [] : value);

type Filled = Readonly<Record<string, unknown>>;

const selectedOption = (options: readonly AcceptedOption[], value: string | undefined) =>
  options.find((option) => option.value === value);

/**
 * An element's value in the platform's shape, `null` for an empty one as it sends it; undefined where the value
 * is none that the element offers.
 */
export const filledShape = (element: AcceptedElement, value: FieldValue): Filled | undefined => {
  const single = one(value);
  switch (element.type) {
    case 'plain_text_input':
    case 'number_input':
      return { type: element.type, value: single ?? null };
    case 'datepicker':
      return { type: element.type, selected_date: single ?? null };
    case 'timepicker':
      return { type: element.type, selected_time: single ?? null };
    case 'users_select':
      return { type: element.type, selected_user: single ?? null };
    case 'conversations_select':
      return { type: element.type, selected_conversation: single ?? null };
    case 'multi_users_select':
      return { type: element.type, selected_users: [...many(value)] };
    case 'static_select':
    case 'radio_buttons': {
      const option = selectedOption(optionsOf<AcceptedOption>(element), single);
      return single !== undefined && option === undefined
        ? undefined
        : { type: element.type, selected_option: option ?? null };
    }
    case 'multi_static_select':
    case 'checkboxes': {
      const options = optionsOf<AcceptedOption>(element).filter((option) =>
        many(value).includes(option.value),
      );
      return options.length === many(value).length
        ? { type: element.type, selected_options: options }
        : undefined;
    }
    case 'button':
    case 'overflow':
    case 'image':
      return undefined;
  }
};

const actionIdOf = (element: AcceptedElement): string => ('action_id' in element ? element.action_id : '');

/** `state.values` of a message or view: every element that holds something, filled in or not. */
export const stateOf = (
  blocks: readonly AcceptedBlock[],
  values: FormValues,
): Readonly<Record<string, Readonly<Record<string, Filled>>>> =>
  Object.fromEntries(
    blocks.flatMap((block) => {
      const filled = elementsOf(block).flatMap((element) => {
        const initial = initialValueOf(element);
        if (initial === undefined) return [];
        const id = actionIdOf(element);
        const shape = filledShape(element, values[block.block_id]?.[id] ?? initial);
        return shape === undefined ? [] : [[id, shape] as const];
      });
      return filled.length === 0 ? [] : [[block.block_id, Object.fromEntries(filled)] as const];
    }),
  );

const fieldProblem = (
  element: AcceptedElement,
  value: FieldValue,
  isOptional: boolean,
): string | undefined => {
  const isEmpty = value.length === 0;
  if (isEmpty) return isOptional ? undefined : 'Please fill this in.';
  if (filledShape(element, value) === undefined) return 'Choose one of the options.';
  if (element.type === 'plain_text_input') {
    if (value.length < (element.min_length ?? 0)) return `Needs at least ${element.min_length} characters.`;
    if (value.length > (element.max_length ?? 3000))
      return `Takes at most ${element.max_length ?? 3000} characters; this has ${value.length}.`;
  }
  if (element.type === 'number_input') {
    const number = Number(value);
    if (Number.isNaN(number)) return 'Needs a number.';
    if (!element.is_decimal_allowed && !Number.isInteger(number)) return 'Needs a whole number.';
    if (element.min_value !== undefined && number < Number(element.min_value))
      return `Needs ${element.min_value} or more.`;
    if (element.max_value !== undefined && number > Number(element.max_value))
      return `Needs ${element.max_value} or less.`;
  }
  if (
    element.type === 'multi_static_select' &&
    element.max_selected_items !== undefined &&
    value.length > element.max_selected_items
  )
    return `Takes at most ${element.max_selected_items}.`;
  return undefined;
};

/** What the platform itself finds wrong with a form before it is sent, by block. */
export const formProblems = (
  blocks: readonly AcceptedBlock[],
  values: FormValues,
): Readonly<Record<string, string>> =>
  Object.fromEntries(
    blocks.flatMap((block) => {
      if (block.type !== 'input') return [];
      const { element } = block;
      const value = values[block.block_id]?.[element.action_id] ?? initialValueOf(element) ?? '';
      const problem = fieldProblem(element, value, block.optional === true);
      return problem === undefined ? [] : [[block.block_id, problem] as const];
    }),
  );
