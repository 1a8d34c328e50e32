import nock from 'nock';
import { z } from 'zod';
import { saveVersion } from '../../../bot/flows/save-version.ts';
import { handlers } from '../../../bot/handlers.ts';
import { enqueueDue, nextDueAt } from '../../../bot/notices/due-in-studio.ts';
import { english } from '../../../bot/words/en.ts';
import { classesOfWeek } from '../../../domain/calendar/classes-of-week.ts';
import { isoWeekOf } from '../../../domain/calendar/iso-week.ts';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { reportOnClass } from '../../../domain/class-report.ts';
import type { PlanRecord } from '../../../domain/plan/plan-life.ts';
import { defaultSettings, type Settings } from '../../../domain/settings.ts';
import { createFakeWorkspace } from '../../helpers/fake-workspace.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';
import { actionPayload, messagePayload } from '../../helpers/payloads.ts';
import { createFastTime, createTestApp } from '../../helpers/test-app.ts';

const studioId = 'T1';
export const mira = 'U1';
export const ines = 'U2';
export const coach = 'U9';
export const teamChannel = 'C1';
const zone = 'Europe/Lisbon';

/** Monday 18:30 and Thursday 18:30 in the Hall, Thursday 19:30 after it. */
export const studioSettings: Settings = {
  ...defaultSettings,
  zone,
  headCoaches: [coach],
  reviewChannel: 'C7',
  teamChannel,
  rooms: [
    {
      name: 'Hall',
      kit: { dumbbell: 28, mat: 16 },
      doorSeconds: 0,
      clearUpSeconds: 0,
      emergencyCard: 'Phone by the door, gate 2.',
    },
  ],
  slots: [
    {
      id: 'mon',
      name: 'Monday Lift',
      weekday: 'Mon',
      time: '18:30',
      seconds: 2700,
      room: 'Hall',
      instructorId: mira,
      people: 14,
    },
    {
      id: 'thu',
      name: 'Thursday Lift',
      weekday: 'Thu',
      time: '18:30',
      seconds: 2700,
      room: 'Hall',
      instructorId: mira,
      people: 14,
    },
    {
      id: 'late',
      name: 'Late Lift',
      weekday: 'Thu',
      time: '19:30',
      seconds: 1800,
      room: 'Hall',
      instructorId: ines,
      people: 10,
    },
  ],
};

const planText = `Push & Press, 45 min, level 2, 14 people, Hall
warm-up 6:00: march, arm circles
circuit x5, 40/20
push-up
dumbbell shoulder press
goblet squat
dead bug
rest 60
circuit x3, 40/20
plank
reverse lunge alternating
cool-down to the end`;

/** The stamp of the message that the draft for a class is under. */
export function homeThread(slotId: string, date: string, { slots } = studioSettings): string {
  return `${date.replaceAll('-', '')}.00000${slots.findIndex(({ id }) => id === slotId)}`;
}

/** The real app over real storage and a workspace in memory; its clock stands until it is moved. */
export async function createTimetableStudio(
  now: string,
  settings: Settings = studioSettings,
  storage?: Awaited<ReturnType<typeof openTestStorage>>,
) {
  const kept = storage ?? (await openTestStorage());
  const workspace = createFakeWorkspace();
  if (storage === undefined) {
    await kept.studios.save({ id: studioId, name: 'Morgen', createdAt: now });
    await kept.settings.save(studioId, settings, 'f', now);
  }
  const app = createTestApp({
    storage: kept,
    handlers,
    due: { enqueueDue, nextDueAt },
    realTime: createFastTime(15_000),
  });
  app.clock.instant = now;
  await app.start();
  if (storage === undefined) await app.settle();
  const at = async (instant: string) => {
    app.clock.instant = instant;
    await app.settle();
  };
  const person = (id: string) => ({ user: { id, team_id: studioId } });
  return {
    ...app,
    storage: kept,
    workspace,
    /** Sets the clock and lets all that is due be done. */
    at,
    /** Walks from due moment to due moment, as the local workspace's clock does. */
    walkTo: async (instant: string, onStep: (now: string) => void = () => {}) => {
      for (;;) {
        const next = await app.nextDueAt();
        if (next === undefined || next > instant) break;
        await at(next);
        onStep(next);
      }
      await at(instant);
    },
    /** A direct message to Evenset. */
    say: async (by: string, text: string, changes: Record<string, unknown> = {}) => {
      await app.send(messagePayload(text, { user: by, channel: `D${by.slice(1)}`, ...changes }));
      await app.settle();
    },
    tap: async (by: string, actionId: string, value: string) => {
      await app.send(actionPayload(actionId, value, person(by)));
      await app.settle();
    },
    /** Texts in a place, in the order posted, as they stand now. */
    texts: (place: string) =>
      workspace.posts.filter(({ channel }) => channel === place).map(({ text }) => text),
    last: (place: string) => workspace.posts.findLast(({ channel }) => channel === place),
    /** The value of a button on a post. */
    valueOf: (place: string, actionId: string) => {
      const posts = workspace.posts.filter(({ channel }) => channel === place);
      const found = posts
        .map(({ blocks }) => JSON.stringify(blocks ?? []))
        .findLast((blocks) => blocks.includes(`"action_id":"${actionId}"`));
      const [button] =
        new RegExp(`\\{[^{}]*"action_id":"${actionId}"[^{}]*(?:\\{[^{}]*\\})[^{}]*\\}`).exec(found ?? '') ??
        [];
      return z.object({ value: z.string() }).parse(JSON.parse(button ?? '{}')).value;
    },
    /** Gives the class of a date an approved plan, or one that waits. */
    givePlan: async (slotId: string, date: string, state: 'approved' | 'draft', text = planText) => {
      const week = isoWeekOf(`${date}T12:00:00.000Z`, zone);
      const scheduled = classesOfWeek(week, settings, []).find(({ id }) => id === `${slotId}:${date}`);
      if (scheduled === undefined) throw new Error('no such class');
      const id = `plan-${slotId}-${date}`;
      const record: PlanRecord = {
        id,
        authorId: scheduled.instructorId,
        state,
        currentVersion: 1,
        ...(state === 'approved' ? { approvedVersion: 1 } : {}),
        home: { place: `D${scheduled.instructorId.slice(1)}`, thread: homeThread(slotId, date, settings) },
        createdAt: app.clock.instant,
      };
      await kept.inTransaction(async (stores) => {
        const desk = {
          studioId,
          stores,
          settings,
          catalogue,
          words: english,
          now: app.clock.instant,
          newId: () => `x-${id}`,
        };
        const report = reportOnClass(text, { catalogue, settings, now: app.clock.instant });
        if (report.kind !== 'report') throw new Error(JSON.stringify(report.problems));
        await stores.plans.create(studioId, record);
        await saveVersion(desk, record, { text, report, cause: { kind: 'written' }, by: record.authorId });
        await stores.classes.save(studioId, { ...scheduled, planId: id });
      });
      return record;
    },
    end: async () => {
      await app.stop();
      await kept.close();
      nock.cleanAll();
    },
  };
}
