import { describe, expect, test } from 'vitest';
import { renderHome } from '../../../bot/blocks/home-view.ts';
import { homeOf } from '../../../bot/flows/home-of.ts';
import { askChanges, sendForReview } from '../../../bot/flows/review-plan.ts';
import { setUpSteps } from '../../../bot/flows/set-up-steps.ts';
import { startDraft } from '../../../bot/flows/start-draft.ts';
import { handlers } from '../../../bot/handlers.ts';
import type { Desk } from '../../../bot/handling.ts';
import { actions } from '../../../bot/ids.ts';
import { acceptHome } from '../../../bot/local/accepted-blocks.ts';
import { demoPeople, demoSettings } from '../../../bot/local/demo/demo-studio.ts';
import { defaultSettings } from '../../../domain/settings.ts';
import { musclesByDay } from '../../../domain/week/muscles-by-day.ts';
import { atDesk } from '../../helpers/at-desk.ts';
import { unshownKinds } from '../../helpers/unshown-kinds.ts';
import { pushAndHinge } from '../conversation/classes.ts';

const mira = demoPeople.instructor.id;
const tomas = demoPeople.coach.id;

const rows = `Rows, 45 min, Thu 18:30
warm-up 6:00: march, hip hinge
straight x6, 40/50
bent-over row
goblet squat
cool-down to the end`;

const textOf = async (desk: Desk, personId: string): Promise<string> => {
  const view = renderHome(await homeOf(desk, personId), desk.words);
  expect(acceptHome(view)).toMatchObject({ kind: 'accepted' });
  expect(unshownKinds(view)).toEqual([]);
  return JSON.stringify(view);
};

describe('an instructor’s home', () => {
  test('classes of today and the days after, each with its state', () =>
    atDesk(async (desk) => {
      const home = await homeOf(desk, mira);
      expect(home.today.map(({ startsAt }) => startsAt?.time)).toEqual(['12:30']);
      expect(home.later.map(({ scheduled }) => scheduled?.slotId)).toEqual(['thu-evening', 'mon-evening']);
      expect(home.coach).toBeUndefined();
      expect(home.maySet).toBe(false);
      const text = await textOf(desk, mira);
      expect(text).toContain('Wed 14 Oct, 12:30');
      expect(text).toContain('no plan yet');
      expect(text).not.toContain('open-settings');
    }));

  test('a near class without a plan waits; with a draft it waits to be sent; sent, it waits no more', () =>
    atDesk(async (desk) => {
      const waits = async () =>
        (await homeOf(desk, mira)).waiting.flatMap(({ scheduled, waits: why }) =>
          scheduled?.slotId === 'thu-evening' ? [why] : [],
        );
      expect(await waits()).toEqual(['no plan soon']);
      const draft = await startDraft(desk, { personId: mira, text: rows });
      expect(await waits()).toEqual(['not sent soon']);
      await sendForReview(desk, draft, mira);
      expect(await waits()).toEqual([]);
    }));

  test('changes asked wait for the author', () =>
    atDesk(async (desk) => {
      const draft = await startDraft(desk, { personId: mira, text: rows });
      const sent = await sendForReview(desk, draft, mira);
      if (sent.kind !== 'stepped') throw new Error('Not sent.');
      await askChanges(desk, sent.open, tomas, 1, 'longer rest');
      const { waiting, drafts } = await homeOf(desk, mira);
      expect(waiting[0]).toMatchObject({ title: 'Rows', waits: 'changes asked' });
      expect(drafts).toEqual([]);
    }));
});

describe('a coach’s home', () => {
  test('what waits for approval, with a look at it, and numbers by muscle and day', () =>
    atDesk(async (bare) => {
      const desk = { ...bare, workspaceUrl: 'https://morgen.example/' };
      const draft = await startDraft(desk, { personId: mira, text: rows });
      await sendForReview(desk, draft, mira);
      const { coach, maySet } = await homeOf(desk, tomas);
      expect(maySet).toBe(true);
      expect(coach?.approval.map(({ open }) => open.version.plan?.facts.title)).toEqual(['Rows']);
      const back = coach?.muscles.find(({ muscle }) => muscle === 'upper back');
      expect(back?.setsByDay[3]).toBe(6);
      const text = await textOf(desk, tomas);
      expect(text).toMatch(/upper back +\S+ +\S+ +\S+ +6 +· +\? +·/);
      expect(text).toContain('show-timeline');
      expect(text).toContain('open-settings');
    }));

  test('names nobody: the table is of muscles', () =>
    atDesk(async (desk) => {
      const { coach } = await homeOf(desk, tomas);
      expect(JSON.stringify(coach?.muscles)).not.toContain('U0');
    }));
});

test('sets by day add up the loads of that day, halves included; first priorities always have a row', () => {
  const load = (sets: number) => [{ muscle: 'biceps' as const, sets, tensionSeconds: 30 }];
  expect(
    musclesByDay(
      [
        { day: 0, load: load(2) },
        { day: 0, load: load(1.5) },
        { day: 6, load: load(1) },
      ],
      ['chest'],
    ),
  ).toEqual([
    { muscle: 'chest', setsByDay: [0, 0, 0, 0, 0, 0, 0] },
    { muscle: 'biceps', setsByDay: [3.5, 0, 0, 0, 0, 0, 1] },
  ]);
});

describe('what leads on', () => {
  const home = 'https://morgen.example/';
  const markSent = async (desk: Desk, key: string, place: string, stamp: string) => {
    await desk.stores.notices.markSending(desk.studioId, key, desk.now);
    await desk.stores.notices.markSent(desk.studioId, key, { place, stamp }, desk.now);
  };

  test('a title leads to the thread of its plan, a title to approve to its review; a button writes a class', () =>
    atDesk(async (bare) => {
      const desk = { ...bare, workspaceUrl: home };
      const draft = await startDraft(desk, {
        personId: mira,
        text: rows,
        home: { place: 'D1', thread: '1700.000100' },
      });
      expect(await textOf(desk, mira)).toContain(`*<${home}archives/D1/p1700000100|Rows>* · still a draft`);
      expect(await textOf(desk, mira)).toContain('"action_id":"open-draft"');
      await sendForReview(desk, draft, mira);
      await markSent(desk, `review:${draft.record.id}:1`, 'C7', '1800.000200');
      expect(await textOf(desk, tomas)).toContain(`*<${home}archives/C7/p1800000200|Rows>*`);
      expect(await textOf(desk, tomas)).not.toContain('/archives/D1/');
    }));

  test('a draft written in the form leads to the message that Evenset posted, once it stands', () =>
    atDesk(async (bare) => {
      const desk = { ...bare, workspaceUrl: home };
      const draft = await startDraft(desk, { personId: mira, text: rows });
      expect(await textOf(desk, mira)).toContain('*Rows* · still a draft');
      await markSent(desk, `text:${draft.record.id}`, 'D2', '1900.000300');
      expect(await textOf(desk, mira)).toContain(`<${home}archives/D2/p1900000300|Rows>`);
    }));

  test('where the workspace does not say its address, titles stand as they are', () =>
    atDesk(async (desk) => {
      await startDraft(desk, { personId: mira, text: rows, home: { place: 'D1', thread: '1700.000100' } });
      const text = await textOf(desk, mira);
      expect(text).toContain('*Rows* · still a draft');
      expect(text).not.toContain('archives');
    }));
});

describe('a short home', () => {
  test('has one line for all that is empty, and no set-up for those who can’t take its steps', () =>
    atDesk(async (desk) => {
      const nobody = JSON.parse(await textOf(desk, 'U0NOBODY'));
      expect(nobody.blocks.map(({ block_id }: { block_id: string }) => block_id)).toEqual([
        'write',
        'none',
        'own',
        'standing',
      ]);
      expect(JSON.stringify(nobody)).toContain(
        'No class today · nothing waits for me · no class in the next seven days · no draft',
      );
    }));

  test('of a coach begins with what waits for approval, and approves the clean ones by one tap', () =>
    atDesk(async (desk) => {
      const draft = await startDraft(desk, { personId: mira, text: rows });
      await sendForReview(desk, draft, mira);
      const ids = async () =>
        JSON.parse(await textOf(desk, tomas)).blocks.map(({ block_id }: { block_id: string }) => block_id);
      const shown = await ids();
      const titles = shown.filter((id: string) => id.endsWith('-title'));
      expect(titles.slice(0, 2)).toEqual(['approval-title', 'set-up-title']);
      const { coach } = await homeOf(desk, tomas);
      expect(coach?.approval[0]?.trouble).toMatch(/^\*Look at:\*/);
      expect(shown).not.toContain('clean');
      const clean = await startDraft(desk, { personId: mira, text: pushAndHinge });
      await sendForReview(desk, clean, mira);
      expect(await ids()).toContain('clean');
      const approveClean = handlers.actions[actions.approveClean];
      const reaction = await approveClean?.(
        {
          kind: 'action',
          actionId: actions.approveClean,
          value: JSON.stringify([[clean.record.id, 1]]),
          personId: tomas,
          triggerId: 't',
          view: { id: 'V1', metadata: '', values: {} },
        },
        desk,
      );
      expect(reaction?.answers.map(({ kind }) => kind)).toEqual(['only to you', 'publish home']);
      expect(await ids()).not.toContain('clean');
      expect(await desk.stores.plans.find(desk.studioId, clean.record.id)).toMatchObject({
        state: 'approved',
      });
    }));
});

describe('set-up', () => {
  test('a new studio is told every step, with the way to settings for whoever sets it up', () =>
    atDesk(async (desk) => {
      const fresh = { ...desk, settings: defaultSettings };
      expect((await homeOf(desk, mira)).setUp).toEqual([]);
      expect((await homeOf(fresh, mira)).setUp).toEqual([
        'zone',
        'headCoaches',
        'reviewChannel',
        'teamChannel',
        'rooms',
        'slots',
      ]);
      expect(await textOf(fresh, mira)).toContain('open-settings');
    }));

  test('a room without an emergency card is a step; a studio that is ready has none', () => {
    expect(setUpSteps(demoSettings)).toEqual(['emergencyCard']);
    const rooms = demoSettings.rooms.map((room) => ({ ...room, emergencyCard: 'Gate 2.' }));
    expect(setUpSteps({ ...demoSettings, rooms })).toEqual([]);
  });
});
