import { describe, expect, test } from 'vitest';
import { type AcceptedBlock, acceptMessageBlocks } from '../../../bot/local/accepted-blocks.ts';
import { formProblems, stateOf } from '../../../bot/local/form-values.ts';

const plain = (text: string) => ({ type: 'plain_text', text });
const options = ['a', 'b', 'c'].map((value) => ({ text: plain(value), value }));

const accept = (blocks: readonly object[]): readonly AcceptedBlock[] => {
  const accepted = acceptMessageBlocks(blocks);
  if (accepted.kind === 'refused') throw new Error(accepted.messages.join());
  return accepted.value;
};
const input = (id: string, element: object, change: object = {}) => ({
  type: 'input',
  block_id: id,
  label: plain(id),
  element: { action_id: 'v', ...element },
  ...change,
});

const blocks = accept([
  input('text', { type: 'plain_text_input', min_length: 3, max_length: 5 }),
  input('number', { type: 'number_input', is_decimal_allowed: false, min_value: '1', max_value: '9' }),
  input('select', { type: 'static_select', options, initial_option: options[1] }),
  input('many', { type: 'multi_static_select', options, max_selected_items: 2 }, { optional: true }),
  input('date', { type: 'datepicker' }, { optional: true }),
  { type: 'actions', block_id: 'buttons', elements: [{ type: 'button', text: plain('a') }] },
]);

describe('what is filled in', () => {
  test('goes out in the shape of the platform, empty fields as null', () => {
    expect(stateOf(blocks, { text: { v: 'abc' }, many: { v: ['a', 'c'] } })).toEqual({
      text: { v: { type: 'plain_text_input', value: 'abc' } },
      number: { v: { type: 'number_input', value: null } },
      select: { v: { type: 'static_select', selected_option: options[1] } },
      many: { v: { type: 'multi_static_select', selected_options: [options[0], options[2]] } },
      date: { v: { type: 'datepicker', selected_date: null } },
    });
  });

  const fine = { text: { v: 'abc' }, number: { v: '3' } };
  test.each<[string, object, object]>([
    ['nothing wrong', {}, {}],
    ['a field left empty', { text: { v: '' } }, { text: 'Please fill this in.' }],
    ['a text too short', { text: { v: 'ab' } }, { text: 'Needs at least 3 characters.' }],
    ['a text too long', { text: { v: 'abcdef' } }, { text: 'Takes at most 5 characters; this has 6.' }],
    ['no number', { number: { v: 'x' } }, { number: 'Needs a number.' }],
    ['no whole number', { number: { v: '1.5' } }, { number: 'Needs a whole number.' }],
    ['a number too small', { number: { v: '0' } }, { number: 'Needs 1 or more.' }],
    ['a number too large', { number: { v: '10' } }, { number: 'Needs 9 or less.' }],
    ['an option that is not offered', { select: { v: 'z' } }, { select: 'Choose one of the options.' }],
    ['too many options', { many: { v: ['a', 'b', 'c'] } }, { many: 'Takes at most 2.' }],
  ])('%s', (_name, change, problems) => {
    expect(formProblems(blocks, { ...fine, ...change })).toEqual(problems);
  });
});
