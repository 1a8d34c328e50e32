import { describe, expect, test } from 'vitest';
import { printButtonValue } from '../../../bot/blocks/button-value.ts';
import { openPlan } from '../../../bot/flows/open-plan.ts';
import { carryOutOrder } from '../../../bot/flows/own-moves.ts';
import { startDraft } from '../../../bot/flows/start-draft.ts';
import type { Desk } from '../../../bot/handling.ts';
import { acceptModal } from '../../../bot/local/accepted-blocks.ts';
import { demoChannels, demoPeople } from '../../../bot/local/demo/demo-studio.ts';
import { onMessage } from '../../../bot/messages/on-message.ts';
import { onChangeOwnMoveForm, onOpenOwnMove, onOwnMoveForm } from '../../../bot/views/own-move-views.ts';
import { extendCatalogue } from '../../../domain/catalogue/extend-catalogue.ts';
import { readMoveOrder } from '../../../domain/shorthand/read-move-order.ts';
import { atBareDesk } from '../../helpers/at-desk.ts';

const mira = demoPeople.instructor.id;
const tomas = demoPeople.coach.id;

async function say(desk: Desk, by: string, text: string): Promise<string> {
  const order = readMoveOrder(text);
  if (order === undefined) throw new Error(`No order: ${text}`);
  return carryOutOrder(desk, by, order);
}

/** The desk as the next request finds it. */
async function later(desk: Desk): Promise<Desk> {
  const stored = await desk.stores.settings.find(desk.studioId);
  if (stored === undefined) throw new Error('No settings.');
  const { ownMoves, ownNames } = stored.settings;
  const catalogue = extendCatalogue(desk.catalogue, ownMoves, new Map(Object.entries(ownNames)));
  return { ...desk, settings: stored.settings, catalogue };
}

const crawls = `Crawls, 30 min
warm-up 6:00
circuit x3, 40/20
yard crawl
goblet squat
cool-down to the end`;

const form = (values: Record<string, string | readonly string[]>, metadata = '') => ({
  kind: 'view' as const,
  callbackId: 'own-move-form',
  viewId: 'V1',
  metadata,
  values,
  personId: mira,
  triggerId: 't1',
});

describe('by short message', () => {
  test('a new move is read, counted and checked at once', () =>
    atBareDesk(async (desk) => {
      const before = await startDraft(desk, { personId: mira, text: crawls });
      expect(before.report.kind).toBe('problems');
      expect(await say(desk, mira, 'new move yard crawl like bear crawl, level 2')).toMatch(
        /^Added: \*yard crawl\*, like bear crawl\. level 2/,
      );
      const after = await startDraft(await later(desk), { personId: mira, text: crawls });
      expect(after.report.kind).toBe('report');
    }));

  test('the coaches are told in the review channel who added it; a coach’s own is not told', () =>
    atBareDesk(async (desk) => {
      await say(desk, mira, 'new move yard crawl like bear crawl');
      await say(await later(desk), tomas, 'new move yard row like bent-over row');
      expect(await desk.stores.notices.find(desk.studioId, 'own-move:yard-crawl')).toMatchObject({
        to: demoChannels.review.id,
        payload: { text: expect.stringContaining(`<@${mira}> added our own move *yard crawl*`) },
      });
      expect(await desk.stores.notices.find(desk.studioId, 'own-move:yard-row')).toBeUndefined();
    }));

  test('a coach changes, retires and brings back; an instructor is told who can', () =>
    atBareDesk(async (desk) => {
      await say(desk, mira, 'new move yard crawl like bear crawl, level 2');
      expect(await say(await later(desk), mira, 'change move yard crawl: level 3')).toMatch(/^Head coaches/);
      expect(await say(await later(desk), tomas, 'change move yard crawl: level 3')).toContain('level 3');
      expect(await say(await later(desk), tomas, 'retire move yard crawl')).toMatch(/^Retired/);
      const retired = await later(desk);
      expect(retired.catalogue.moves.some(({ id }) => id === 'yard-crawl')).toBe(false);
      expect(await say(retired, mira, 'new move yard crawl like plank')).toContain('yard crawl already');
      expect(await say(retired, tomas, 'bring back move yard crawl')).toMatch(/^Back in use/);
      expect((await later(desk)).catalogue.moves.some(({ id }) => id === 'yard-crawl')).toBe(true);
    }));

  test('a nickname wins over the trade’s word, and can be dropped', () =>
    atBareDesk(async (desk) => {
      expect(await say(desk, tomas, 'nickname press = push-up')).toContain('read as *push-up*');
      const named = await later(desk);
      expect(named.settings.ownNames).toEqual({ press: 'push-up' });
      expect(await say(named, mira, 'our moves')).toContain('• “press” = push-up');
      await say(named, tomas, 'drop nickname press');
      expect((await later(desk)).settings.ownNames).toEqual({});
    }));

  test.each([
    ['new move goblet squat like plank', 'goblet squat already'],
    ['new move heavy crawl like plank', '“heavy”'],
    ['new move water like plank', 'reads as something else'],
    ['new move yard crawl', 'Like which known move?'],
    ['new move yard crawl like qqqq', '“qqqq” is no'],
    ['new move yard crawl like press', 'Did you mean'],
    ['new move yard crawl like plank, sparkling', 'Not read: sparkling'],
    ['new move yard crawl like plank, easier pull-up', 'no easier option'],
    ['change move plank: level 3', 'none of our own moves'],
    ['nickname rest = push-up', 'means something of its own'],
    ['nickname yardie = qqqq', '“qqqq” is no'],
    ['drop nickname yardie', 'no nickname here'],
    ['our moves', 'no moves or nicknames of our own'],
  ])('%s: nothing is changed and the next step is said', (text, said) =>
    atBareDesk(async (desk) => {
      expect(await say(desk, tomas, text)).toContain(said);
      const { settings } = await later(desk);
      expect([settings.ownMoves, settings.ownNames]).toEqual([[], {}]);
    }),
  );

  test('in the direct message the answer comes back, and no draft is made', () =>
    atBareDesk(async (desk) => {
      const at = { personId: mira, place: 'D1', stamp: '1.1', edited: false } as const;
      const message = { kind: 'message', source: 'direct message', ...at } as const;
      await onMessage({ ...message, text: 'new move yard crawl like bear crawl' }, desk);
      expect(await desk.stores.notices.find(desk.studioId, 'reply:D1:1.1')).toMatchObject({
        payload: { text: expect.stringContaining('Added: *yard crawl*') },
      });
      expect(await desk.stores.plans.listByAuthor(desk.studioId, mira, 1)).not.toContainEqual(
        expect.objectContaining({ state: 'draft' }),
      );
    }));
});

describe('by form', () => {
  test('one tap beside the unknown words opens it with the name; saved, the draft is read anew', () =>
    atBareDesk(async (desk) => {
      const draft = await startDraft(desk, { personId: mira, text: crawls });
      const start = crawls.indexOf('yard crawl');
      const value = printButtonValue({
        plan: draft.record.id,
        version: 1,
        at: [start, start + 'yard crawl'.length],
        name: 'yard crawl',
      });
      const request = { kind: 'action', actionId: 'open-own-move', personId: mira, triggerId: 't' } as const;
      const { answers } = await onOpenOwnMove({ ...request, value }, desk);
      const [answer] = answers;
      const view = answer?.kind === 'open view' ? answer.view : undefined;
      expect(view?.blocks[0]).toMatchObject({ element: { initial_value: 'yard crawl' } });

      const reaction = await onOwnMoveForm(
        form({ name: 'yard crawler', like: 'bear-crawl', level: '2', kit: ['none'] }, view?.private_metadata),
        desk,
      );
      expect(reaction.ack).toEqual({ kind: 'close' });
      const open = await openPlan(await later(desk), draft.record.id);
      expect(open?.version.version).toBe(2);
      expect(open?.version.text).toContain('yard crawler');
      expect(open?.report.kind).toBe('report');
    }));

  test('from the settings it is added and listed there; by whoever may not set, the form closes', () =>
    atBareDesk(async (desk) => {
      const filled = { name: 'yard crawl', like: 'bear-crawl' };
      const listed = await onOwnMoveForm({ ...form(filled), personId: tomas }, desk);
      expect(listed.ack?.kind).toBe('update');
      expect(acceptModal(listed.ack?.kind === 'update' ? listed.ack.view : undefined).kind).toBe('accepted');
      expect(JSON.stringify(listed.ack)).toContain('Added: *yard crawl*');
      const other = await onOwnMoveForm(form({ ...filled, name: 'yard walk' }), await later(desk));
      expect(other.ack).toEqual({ kind: 'close' });
      expect((await later(desk)).settings.ownMoves.map(({ name }) => name)).toEqual([
        'yard crawl',
        'yard walk',
      ]);
      const forged = await onOwnMoveForm(
        form({ ...filled, name: 'yard run' }, 'no value'),
        await later(desk),
      );
      expect(forged.ack?.kind).toBe('errors');
    }));

  test('a wrong form says what at its field and keeps what was filled in', () =>
    atBareDesk(async (desk) => {
      const reaction = await onOwnMoveForm(form({ name: 'plank', like: 'bear-crawl' }), desk);
      expect(reaction.ack).toMatchObject({ kind: 'errors', byBlock: { name: expect.any(String) } });
      const without = await onOwnMoveForm(form({ name: 'yard crawl' }), desk);
      expect(without.ack).toMatchObject({ kind: 'errors', byBlock: { like: expect.any(String) } });
    }));

  test('forged values are refused', () =>
    atBareDesk(async (desk) => {
      const forged = form({ name: 'yard crawl', like: 'bear-crawl', prime: ['everything'] });
      expect((await onOwnMoveForm(forged, desk)).ack?.kind).toBe('errors');
      expect((await later(desk)).settings.ownMoves).toEqual([]);
    }));

  test('a coach changes one by form; the person’s role counts at that click', () =>
    atBareDesk(async (desk) => {
      await say(desk, mira, 'new move yard crawl like bear crawl, also yardie');
      const filled = { standing: 'retired', level: '2', prime: ['shoulders'], easier: 'bear-crawl' };
      const refused = await onChangeOwnMoveForm(form(filled, 'yard-crawl'), await later(desk));
      expect(refused.ack?.kind).toBe('errors');
      const done = { ...form(filled, 'yard-crawl'), personId: tomas };
      expect((await onChangeOwnMoveForm(done, await later(desk))).ack?.kind).toBe('update');
      expect((await later(desk)).settings.ownMoves[0]).toMatchObject({
        retired: true,
        level: 2,
        primeMovers: ['shoulders'],
        assisting: [],
        nicknames: [],
      });
    }));
});
