import { describe, expect, test } from 'vitest';
import { acceptHome, acceptMessageBlocks, acceptModal } from '../../../bot/local/accepted-blocks.ts';

// The limits are the platform's own: https://docs.slack.dev/reference/block-kit

const plain = (length: number) => ({ type: 'plain_text', text: 'x'.repeat(length) });
const marked = (length: number) => ({ type: 'mrkdwn', text: 'x'.repeat(length) });
const option = (index: number, length = 5) => ({ text: plain(length), value: `v${index}` });
const options = (count: number) => Array.from({ length: count }, (_, index) => option(index));
const button = (change: object = {}) => ({ type: 'button', text: plain(5), ...change });
const section = (length = 5) => ({ type: 'section', text: marked(length) });
const sections = (count: number) => Array.from({ length: count }, () => section());
const cells = (count: number) => Array.from({ length: count }, () => ({ type: 'raw_text', text: 'x' }));
const table = (rows: number, columns: number) => ({
  type: 'table',
  rows: Array.from({ length: rows }, () => cells(columns)),
});
const categories = (count: number) => Array.from({ length: count }, (_, index) => `c${index}`);
const chart = (change: { series?: number; categories?: number; title?: number; label?: string } = {}) => {
  const labels = change.label === undefined ? categories(change.categories ?? 2) : [change.label];
  return {
    type: 'data_visualization',
    title: 'x'.repeat(change.title ?? 5),
    chart: {
      type: 'bar',
      series: Array.from({ length: change.series ?? 1 }, (_, index) => ({
        name: `s${index}`,
        data: labels.map((label) => ({ label, value: 1 })),
      })),
      axis_config: { categories: labels },
    },
  };
};
const actions = (...elements: object[]) => ({ type: 'actions', elements });

const isAccepted = (blocks: readonly object[]) => acceptMessageBlocks(blocks).kind === 'accepted';

describe('a message takes what is at the limit and refuses what is past it', () => {
  test.each<[string, (size: number) => readonly object[], number]>([
    ['blocks', (size) => sections(size), 50],
    ['section text', (size) => [section(size)], 3000],
    ['section fields', (size) => [{ type: 'section', fields: sections(size).map(() => marked(1)) }], 10],
    ['one field', (size) => [{ type: 'section', fields: [marked(size)] }], 2000],
    ['header', (size) => [{ type: 'header', text: plain(size) }], 150],
    ['context elements', (size) => [{ type: 'context', elements: sections(size).map(() => marked(1)) }], 10],
    ['actions', (size) => [actions(...sections(size).map(() => button()))], 25],
    ['button text', (size) => [actions(button({ text: plain(size) }))], 75],
    ['button value', (size) => [actions(button({ value: 'x'.repeat(size) }))], 2000],
    ['action_id', (size) => [actions(button({ action_id: 'x'.repeat(size) }))], 255],
    ['block_id', (size) => [{ ...section(), block_id: 'x'.repeat(size) }], 255],
    ['select options', (size) => [actions({ type: 'static_select', options: options(size) })], 100],
    ['option text', (size) => [actions({ type: 'static_select', options: [option(1, size)] })], 75],
    ['overflow options', (size) => [actions({ type: 'overflow', options: options(size) })], 5],
    ['radio options', (size) => [actions({ type: 'radio_buttons', options: options(size) })], 10],
    ['checkbox options', (size) => [actions({ type: 'checkboxes', options: options(size) })], 10],
    ['table rows', (size) => [table(size, 1)], 100],
    ['table columns', (size) => [table(1, size)], 20],
    [
      'table text',
      (size) => [{ type: 'table', rows: [[{ type: 'raw_text', text: 'x'.repeat(size) }]] }],
      10_000,
    ],
    ['chart title', (size) => [chart({ title: size })], 50],
    ['chart series', (size) => [chart({ series: size })], 6],
    ['chart categories', (size) => [chart({ categories: size })], 20],
    ['chart label', (size) => [chart({ label: 'x'.repeat(size) })], 20],
    ['charts', (size) => Array.from({ length: size }, () => chart()), 2],
    ['tables', (size) => Array.from({ length: size }, () => table(1, 1)), 1],
  ])('%s', (_name, blocks, limit) => {
    expect(isAccepted(blocks(limit))).toBe(true);
    expect(isAccepted(blocks(limit + 1))).toBe(false);
  });

  test.each<[string, object]>([
    ['an empty section text', section(0)],
    ['a section with neither text nor fields', { type: 'section' }],
    ['an empty cell', { type: 'table', rows: [[{ type: 'raw_text', text: '' }]] }],
    ['a header with markup', { type: 'header', text: marked(3) }],
    ['a button label with markup', actions(button({ text: marked(3) }))],
    ['an unknown kind', { type: 'banner', text: plain(3) }],
    ['an unknown key', { ...section(), colour: 'red' }],
    ['an unknown style', actions(button({ style: 'big' }))],
    ['the same action_id twice', actions(button({ action_id: 'a' }), button({ action_id: 'a' }))],
    ['the same option value twice', actions({ type: 'overflow', options: [option(1), option(1)] })],
    [
      'a chosen option that is none of the options',
      actions({ type: 'static_select', options: options(2), initial_option: option(7) }),
    ],
    ['a text field among actions', actions({ type: 'plain_text_input' })],
    ['an image without a description', { type: 'image', image_url: 'https://a.example/a.png', alt_text: '' }],
    ['an image without a source', { type: 'image', alt_text: 'a' }],
    ['a date that is none', actions({ type: 'datepicker', initial_date: '2026-02-30' })],
    ['a time that is none', actions({ type: 'timepicker', initial_time: '24:10' })],
    [
      'a series without a point for each category',
      {
        ...chart(),
        chart: {
          type: 'line',
          series: [{ name: 's', data: [{ label: 'a', value: 1 }] }],
          axis_config: { categories: ['a', 'b'] },
        },
      },
    ],
  ])('refuses %s', (_name, block) => {
    expect(isAccepted([block])).toBe(false);
  });

  test('refuses the same block_id twice', () => {
    expect(
      isAccepted([
        { ...section(), block_id: 'a' },
        { ...section(), block_id: 'a' },
      ]),
    ).toBe(false);
  });

  test('says where and why', () => {
    expect(acceptMessageBlocks([section(), section(3001)])).toEqual({
      kind: 'refused',
      messages: ['[ERROR] must be less than 3001 characters [json-pointer:/blocks/1/text/text]'],
    });
  });
});

describe('views', () => {
  const modal = (change: object = {}) => ({ type: 'modal', title: plain(5), blocks: [section()], ...change });
  const field = { type: 'input', label: plain(5), element: { type: 'plain_text_input' } };

  test.each<[string, (size: number) => object, number]>([
    ['title', (size) => modal({ title: plain(size) }), 24],
    ['submit', (size) => modal({ submit: plain(size) }), 24],
    ['close', (size) => modal({ close: plain(size) }), 24],
    ['private_metadata', (size) => modal({ private_metadata: 'x'.repeat(size) }), 3000],
    ['callback_id', (size) => modal({ callback_id: 'x'.repeat(size) }), 255],
    ['blocks', (size) => modal({ blocks: sections(size) }), 100],
    [
      'text field length',
      (size) =>
        modal({
          submit: plain(4),
          blocks: [{ ...field, element: { type: 'plain_text_input', max_length: size } }],
        }),
      3000,
    ],
  ])('a modal takes its limit of %s and no more', (_name, view, limit) => {
    expect(acceptModal(view(limit)).kind).toBe('accepted');
    expect(acceptModal(view(limit + 1)).kind).toBe('refused');
  });

  test('a modal with a field needs a button to send it', () => {
    expect(acceptModal(modal({ blocks: [field] })).kind).toBe('refused');
    expect(acceptModal(modal({ blocks: [field], submit: plain(4) })).kind).toBe('accepted');
  });

  test('a table and a chart belong in messages only', () => {
    expect(acceptModal(modal({ blocks: [table(1, 1)] })).kind).toBe('refused');
    expect(acceptHome({ type: 'home', blocks: [chart()] }).kind).toBe('refused');
  });

  test('a home takes 100 blocks and no more', () => {
    expect(acceptHome({ type: 'home', blocks: sections(100) }).kind).toBe('accepted');
    expect(acceptHome({ type: 'home', blocks: sections(101) }).kind).toBe('refused');
  });
});
