import { expect, test } from 'vitest';
import { openPlan } from '../../../bot/flows/open-plan.ts';
import { startDraft } from '../../../bot/flows/start-draft.ts';
import type { Desk } from '../../../bot/handling.ts';
import { demoPeople, demoSettings, demoStart, demoTeam } from '../../../bot/local/demo/demo-studio.ts';
import { seedDemo } from '../../../bot/local/demo/seed-demo.ts';
import { english } from '../../../bot/words/en.ts';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { openStorage } from '../../../storage/open-storage.ts';

/** A desk in the demo studio, on a Wednesday at nine; ids count up. */
async function atDesk<Result>(work: (desk: Desk) => Promise<Result>): Promise<Result> {
  const storage = openStorage({ file: ':memory:' });
  let ids = 0;
  const newId = () => {
    ids += 1;
    return `id-${ids}`;
  };
  await seedDemo(storage, { catalogue, words: english, newId });
  const result = await storage.inTransaction((stores) =>
    work({
      studioId: demoTeam.id,
      stores,
      settings: demoSettings,
      catalogue,
      words: english,
      now: demoStart,
      newId,
    }),
  );
  await storage.close();
  return result;
}

const squats = (titleLine: string) => `${titleLine}
warm-up 6:00: march, bodyweight squat
straight x7, 40/35
goblet squat
rest 60
circuit x3, 40/20
push-up
dead bug
cool-down to the end`;

const mira = demoPeople.instructor.id;

test('room, people and length that the title line leaves out are the timetable’s, and said', () =>
  atDesk(async (desk) => {
    const { scheduled, report } = await startDraft(desk, {
      personId: mira,
      text: squats('Squats, Thu 18:30'),
    });
    expect(scheduled).toMatchObject({
      slotId: 'thu-evening',
      room: 'Mill Room',
      people: 14,
      slotSeconds: 2_700,
    });
    expect(report.plan?.facts).toMatchObject({ room: 'Mill Room', people: 14, slotSeconds: 2_700 });
    expect(report.notes).toContainEqual({ code: 'from-timetable', room: 'Mill Room', people: 14 });
  }));

test('what the title line says stands before the timetable', () =>
  atDesk(async (desk) => {
    const text = squats('Squats, 40 min, Thu 18:30, 9 people, Loft');
    const { scheduled } = await startDraft(desk, { personId: mira, text });
    expect(scheduled).toMatchObject({ slotId: 'thu-evening', room: 'Loft', people: 9, slotSeconds: 2_400 });
  }));

test('someone else’s slot is not taken', () =>
  atDesk(async (desk) => {
    const { scheduled } = await startDraft(desk, { personId: mira, text: squats('Squats, Sat 10:00') });
    expect(scheduled?.slotId).toBeUndefined();
  }));

test('a muscle trained within 48 hours is told where the two slots share a habit', () =>
  atDesk(async (desk) => {
    // In the demo no habit holds both Wednesday noon and Thursday evening.
    const thursday = await startDraft(desk, { personId: mira, text: squats('Squats, Thu 18:30') });
    const codesOf = async (planId: string, at: Desk) => {
      const open = await openPlan(at, planId);
      return open?.report.kind === 'report' ? open.report.findings.map(({ code }) => code) : [];
    };
    expect(await codesOf(thursday.record.id, desk)).not.toContain('muscle-trained-lately');

    const habit = { name: 'Noon and Thursday', slotIds: ['wed-noon', 'thu-evening'] };
    const shared: Desk = { ...desk, settings: { ...demoSettings, slotHabits: [habit] } };
    expect(await codesOf(thursday.record.id, shared)).toContain('muscle-trained-lately');
  }));
