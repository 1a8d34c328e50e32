import { describe, expect, test } from 'vitest';
import { onHome } from '../../../bot/events/on-home.ts';
import { onLeft } from '../../../bot/events/on-left.ts';
import { hears, sayOfData } from '../../../bot/flows/data-of-person.ts';
import { startDraft } from '../../../bot/flows/start-draft.ts';
import type { Desk } from '../../../bot/handling.ts';
import { acceptMessageBlocks, acceptModal } from '../../../bot/local/accepted-blocks.ts';
import { demoPeople } from '../../../bot/local/demo/demo-studio.ts';
import { withCare } from '../../../bot/notices/with-care.ts';
import { readEvent } from '../../../bot/requests/read-event.ts';
import { onForgetMe, onNoticesForm, onOpenNotices, onShowMyData } from '../../../bot/views/data-views.ts';
import { atBareDesk, atDesk } from '../../helpers/at-desk.ts';
import { eventPayload } from '../../helpers/payloads.ts';

const mira = demoPeople.instructor.id;
const tomas = demoPeople.coach.id;
const press = (personId: string) => ({
  kind: 'action' as const,
  actionId: 'a',
  value: 'me',
  personId,
  message: { place: 'D0MIRA', stamp: '1.1' },
  triggerId: 't',
});

const noticeTo = async (desk: Desk, key: string) => desk.stores.notices.find(desk.studioId, key);

describe('first run', () => {
  test.each([[undefined], [true as const]])('is told once in the direct message (messages: %s)', (messages) =>
    atBareDesk(async (desk) => {
      const request = { kind: 'home' as const, personId: mira, ...(messages ? { messages } : {}) };
      const first = await onHome(request, desk);
      await onHome(request, desk);
      expect(first.answers.map(({ kind }) => kind)).toEqual(messages ? [] : ['publish home']);
      const told = await noticeTo(desk, `first-run:${mira}`);
      expect(told).toMatchObject({ to: mira, sequence: 1 });
      for (const said of ['90 days', '365', '730', 'my data', 'forget me', 'no names or health details'])
        expect(told?.payload.text).toContain(said);
    }),
  );
});

describe('my data', () => {
  test('counts and titles, by message and from home', () =>
    atDesk(async (desk) => {
      await startDraft(desk, { personId: mira, text: 'Rows & *more*, 30 min\ncircuit x2, 40/20\nplank' });
      const said = await sayOfData(desk, mira, ' My  data ');
      expect(said?.text).toContain('Roles: instructor.');
      expect(said?.text).toMatch(/Plans: \d+ \(.*Rows &amp; /);
      const [answer] = (await onShowMyData(press(mira), desk)).answers;
      const view = answer?.kind === 'open view' ? answer.view : undefined;
      expect(acceptModal(view)).toMatchObject({ kind: 'accepted' });
      expect(JSON.stringify(view)).toContain('forget-me');
    }));

  test('words about something else are none of these', () =>
    atBareDesk(async (desk) => {
      for (const text of ['forget it', 'my data please', 'Forget Me Not, 40 min\ncircuit x3, 40/20\nplank'])
        expect(await sayOfData(desk, mira, text)).toBeUndefined();
    }));
});

describe('forget me', () => {
  test('asks once more, then deletes who pressed, and answers without keeping it', () =>
    atDesk(async (desk) => {
      const asked = await sayOfData(desk, mira, 'forget me');
      expect(acceptMessageBlocks(asked?.blocks)).toMatchObject({ kind: 'accepted' });
      expect(JSON.stringify(asked?.blocks)).toContain('"confirm"');
      const { answers } = await onForgetMe(press(mira), desk);
      expect(answers).toEqual([
        { kind: 'only to you', message: { text: expect.stringContaining('nothing here leads to you') } },
      ]);
      const kept = JSON.stringify(await desk.stores.care.exportStudio(desk.studioId));
      expect(kept).not.toContain(mira);
      expect(kept).toContain(tomas);
    }));

  test('someone else only by who may set', () =>
    atDesk(async (desk) => {
      expect((await sayOfData(desk, mira, `forget <@${tomas}|tomas>`))?.text).toMatch(/^Only head coaches/);
      expect(JSON.stringify(await desk.stores.care.exportStudio(desk.studioId))).toContain(tomas);
      expect((await sayOfData(desk, tomas, `forget <@${mira}>`))?.text).toMatch(/^Done/);
      expect(JSON.stringify(await desk.stores.care.exportStudio(desk.studioId))).not.toContain(mira);
    }));
});

test('notices are chosen per person; what is off is not heard by them alone', () =>
  atBareDesk(async (desk) => {
    const [answer] = (await onOpenNotices(press(mira), desk)).answers;
    expect(acceptModal(answer?.kind === 'open view' ? answer.view : undefined)).toMatchObject({
      kind: 'accepted',
    });
    const form = {
      kind: 'view',
      callbackId: 'notices-form',
      viewId: 'V',
      metadata: '',
      triggerId: 't',
    } as const;
    await onNoticesForm(
      { ...form, personId: mira, values: { notices: ['before a class', 'plans that wait'] } },
      desk,
    );
    expect(await hears(desk, mira, 'how it went')).toBe(false);
    expect(await hears(desk, mira, 'before a class')).toBe(true);
    expect(await hears(desk, tomas, 'how it went')).toBe(true);
  }));

describe('care by the day', () => {
  const counting = () => {
    const looked: string[] = [];
    return {
      looked,
      due: withCare({
        enqueueDue: async (desk) => {
          looked.push(desk.now);
        },
        nextDueAt: async (desk) => desk.now,
      }),
    };
  };
  const later = (desk: Desk, days: number): Desk => ({
    ...desk,
    now: new Date(Date.parse(desk.now) + days * 86_400_000).toISOString(),
  });

  test('what is old goes once a day', () =>
    atDesk(async (desk) => {
      const { due } = counting();
      await startDraft(desk, { personId: mira, text: 'Old, 30 min\ncircuit x2, 40/20\nplank' });
      await due.enqueueDue(desk);
      const drafts = async () =>
        (await desk.stores.plans.listByAuthor(desk.studioId, mira, 50)).filter(
          ({ state }) => state === 'draft',
        );
      await due.enqueueDue(later(desk, 91));
      expect(await drafts()).toEqual([]);
      expect((await desk.stores.care.findCare(desk.studioId)).caredAt).toBe(later(desk, 91).now);
      await due.enqueueDue(later(desk, 91.5));
      expect((await desk.stores.care.findCare(desk.studioId)).caredAt).toBe(later(desk, 91).now);
    }));

  test('a studio that left hears nothing, and is deleted after thirty days', () =>
    atDesk(async (desk) => {
      const { due, looked } = counting();
      await onLeft({ kind: 'left' }, desk);
      await due.enqueueDue(later(desk, 1));
      expect(looked).toEqual([]);
      expect(await due.nextDueAt(later(desk, 1))).toBeUndefined();
      await due.enqueueDue(later(desk, 29));
      expect(await desk.stores.settings.find(desk.studioId)).toBeDefined();
      await due.enqueueDue(later(desk, 30));
      expect(await desk.stores.settings.find(desk.studioId)).toBeUndefined();
      expect((await desk.stores.care.exportStudio(desk.studioId)).plans).toEqual([]);
    }));

  const self = { botUserId: 'UBOT', botId: 'B1' };
  test.each([
    [{ type: 'app_uninstalled' }, 'left'],
    [{ type: 'tokens_revoked', tokens: { oauth: [], bot: ['UBOT'] } }, 'left'],
    [{ type: 'tokens_revoked', tokens: { oauth: ['U1'], bot: [] } }, undefined],
  ])('%j is read as %s', (event, kind) => {
    expect(readEvent(eventPayload(event), self)?.request.kind).toBe(kind);
  });
});
