import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { drawWeekChart } from '../../../bot/blocks/week-picture.ts';
import type { Notice, Storage } from '../../../domain/ports.ts';
import { defaultSettings } from '../../../domain/settings.ts';
import { type Call, createFakeWorkspace, type Fault } from '../../helpers/fake-workspace.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';
import { createFastTime, createTestApp } from '../../helpers/test-app.ts';

const causedAt = '2026-11-02T09:00:00.000Z';
const backOff = { firstMs: 1_000, mostMs: 8_000, mostAttempts: 6 };
const opened: Storage[] = [];

beforeEach(() => {
  nock.disableNetConnect();
});
afterEach(async () => {
  nock.cleanAll();
  nock.enableNetConnect();
  await Promise.all(opened.splice(0).map((storage) => storage.close()));
});

const svg = drawWeekChart(
  { leastSets: 4, bars: [{ name: 'lats', sets: 2 }] },
  { title: 'Sets', least: 'at least 4', sets: String },
);
const chart = { type: 'data_visualization', block_id: 'chart', title: 'Sets', chart: {} };
const numbers = { type: 'section', block_id: 'n', text: { type: 'mrkdwn', text: 'lats 2' } };
const report: Notice = {
  key: 'week',
  to: 'C1',
  action: { kind: 'post' },
  payload: { text: 'Week' },
  causedAt,
};
const thread = { kind: 'post', thread: { noticeKey: 'week' } } as const;
const details: Notice = {
  key: 'details',
  to: 'C1',
  action: thread,
  payload: {
    text: 'lats 2',
    blocks: [chart, numbers],
    fallbackBlocks: [numbers],
    picture: { name: 'week.png', svg, altText: 'Bar chart: lats 2' },
  },
  causedAt,
};
const table: Notice = {
  key: 'table',
  to: 'C1',
  action: thread,
  payload: { text: 'the table as text', file: { name: 'week.csv', title: 'The table', content: 'a,b\r\n' } },
  causedAt,
};

async function run(
  notice: Notice,
  faultFor: (call: Call, place: number) => Fault | undefined = () => undefined,
) {
  const storage = await openTestStorage();
  opened.push(storage);
  nock.cleanAll();
  const workspace = createFakeWorkspace(faultFor);
  const app = createTestApp({ storage, backOff, realTime: createFastTime(15_000) });
  await storage.studios.save({ id: 'T1', name: 'Morgen', createdAt: causedAt });
  await storage.settings.save('T1', { ...defaultSettings, headCoaches: ['U9'] }, 'f', causedAt);
  for (const each of [report, notice]) await storage.notices.enqueue('T1', each);
  await app.start();
  await app.settle();
  await app.stop();
  const inThread = workspace.posts.filter(({ thread: of }) => of !== undefined);
  return { workspace, inThread, stored: await storage.notices.find('T1', notice.key) };
}

const blocksOf = ({ args }: Call): readonly { readonly type: string }[] => JSON.parse(args.blocks ?? '[]');
const has = (call: Call, type: string) =>
  call.method === 'chat.postMessage' && blocksOf(call).some((block) => block.type === type);
const refused: Fault = { kind: 'error', error: 'invalid_blocks' };

describe('a chart', () => {
  test('goes as it is where the workspace takes it', async () => {
    const { inThread, workspace } = await run(details);
    expect(inThread.map(({ blocks }) => blocks)).toEqual([[chart, numbers]]);
    expect(workspace.files.size).toBe(0);
  });

  test('refused, is a picture with alt text, its numbers beside it', async () => {
    const { inThread, workspace } = await run(details, (call) =>
      has(call, 'data_visualization') ? refused : undefined,
    );
    expect(inThread.map(({ blocks }) => blocks)).toEqual([
      [
        {
          type: 'image',
          block_id: 'picture',
          slack_file: { id: 'F1' },
          alt_text: 'Bar chart: lats 2',
        },
        numbers,
      ],
    ]);
    const file = workspace.files.get('F1');
    expect(file?.name).toBe('week.png');
    expect(file?.content.subarray(1, 4).toString('latin1')).toBe('PNG');
  });

  test('a picture still being processed is asked for again', async () => {
    let refusals = 0;
    const { inThread } = await run(details, (call) => {
      if (has(call, 'data_visualization')) return refused;
      if (!has(call, 'image') || refusals === 2) return undefined;
      refusals += 1;
      return refused;
    });
    expect(refusals).toBe(2);
    expect(inThread).toHaveLength(1);
    expect(JSON.stringify(inThread[0]?.blocks)).toContain('alt_text');
  });

  test.each([
    ['the picture is refused too', (call: Call) => has(call, 'image')],
    ['no upload is allowed', ({ method }: Call) => method === 'files.getUploadURLExternal'],
    ['the bytes are not taken', ({ method }: Call) => method === 'upload'],
    ['the upload does not end', ({ method }: Call) => method === 'files.completeUploadExternal'],
  ])('is text where %s', async (_, fails) => {
    const { inThread } = await run(details, (call) =>
      has(call, 'data_visualization') || fails(call) ? refused : undefined,
    );
    expect(inThread.map(({ blocks }) => blocks)).toEqual([[numbers]]);
  });

  test('where all blocks are refused, the text alone arrives', async () => {
    const { inThread } = await run(details, (call) =>
      call.method === 'chat.postMessage' && call.args.blocks !== undefined ? refused : undefined,
    );
    expect(inThread.map(({ text, blocks }) => [text, blocks])).toEqual([['lats 2', undefined]]);
  });
});

describe('a table', () => {
  const whole = { text: 'The table', file: { name: 'week.csv', content: 'a,b\r\n' } };

  test('is posted as a file in its thread, once', async () => {
    const { inThread, stored } = await run(table);
    expect(inThread).toMatchObject([whole]);
    expect(stored?.state).toBe('sent');
  });

  test.each(['429', '500', 'lost', 'broken'] as const)(
    'at every call after the first, who am I, a single %s leaves one file all the same',
    async (kind) => {
      const calls = (await run(table)).workspace.calls.length;
      for (let at = 2; at <= calls; at += 1) {
        const { inThread } = await run(table, (_, place) => (place === at ? { kind } : undefined));
        expect(inThread, `call ${at}`).toMatchObject([whole]);
      }
    },
  );

  test.each([
    ['files.getUploadURLExternal', { kind: 'error', error: 'missing_scope' }],
    ['files.getUploadURLExternal', { kind: '500' }],
    ['upload', { kind: '500' }],
    ['files.completeUploadExternal', { kind: 'error', error: 'not_in_channel' }],
  ] as const)('where %s fails for good, the text stands in its place', async (method, fault: Fault) => {
    const { inThread } = await run(table, (call) => (call.method === method ? fault : undefined));
    expect(inThread.map(({ text, file }) => [text, file])).toEqual([['the table as text', undefined]]);
  });

  test('where every answer of the last step is lost, there is one file and no text', async () => {
    const { inThread } = await run(table, ({ method }) =>
      method === 'files.completeUploadExternal' ? { kind: 'lost' } : undefined,
    );
    expect(inThread).toMatchObject([whole]);
  });
});
