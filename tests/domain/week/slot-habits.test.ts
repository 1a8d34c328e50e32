import { describe, expect, test } from 'vitest';
import { habitRange as habitRangeOf, slotHabitsOf } from '../../../domain/week/slot-habits.ts';
import { judge, type WeekClass, type WeekContext } from '../../../domain/week/week-class.ts';
import { reportTime, slot, studio, taught, week } from './week-builder.ts';

const [mon, tue, thu] = [slot('Mon'), slot('Tue'), slot('Thu')];
const context = (facts: Parameters<typeof studio>[1] = {}) => ({
  week,
  now: reportTime,
  settings: studio([mon, tue, thu], { firstPriority: ['chest', 'lats'], ...facts }),
});

const habitRange = (classes: readonly WeekClass[], at: WeekContext) =>
  habitRangeOf(
    classes.map((one) => judge(one, at)),
    at.settings,
  );

describe('slot habits', () => {
  test("are the studio's own, else every pair and triple", () => {
    expect(slotHabitsOf(context().settings).map(({ name }) => name)).toEqual([
      'Mon class + Tue class',
      'Mon class + Thu class',
      'Tue class + Thu class',
      'Mon class + Tue class + Thu class',
    ]);
    const own = [{ name: 'early birds', slotIds: ['Tue', 'Thu'] }];
    expect(slotHabitsOf({ ...context().settings, slotHabits: own })).toEqual(own);
  });

  test.each([
    [3, 4],
    [10, 165],
    [22, 1771],
  ])('of %d slots there are %d', (count, habits) => {
    const slots = Array.from({ length: count }, (_, place) =>
      slot(
        (['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const)[place % 6] ?? 'Sun',
        `${String(8 + Math.floor(place / 6) * 2).padStart(2, '0')}:00`,
        `slot ${place}`,
      ),
    );
    expect(slotHabitsOf(studio(slots))).toHaveLength(habits);
  });

  test('never hold two slots at one time', () => {
    const clash = slot('Mon', '18:30', 'upstairs');
    const names = slotHabitsOf(studio([mon, clash, slot('Mon', '18:45', 'after')])).map(
      ({ slotIds }) => slotIds,
    );
    expect(names).toEqual([['Mon', 'after']]);
  });
});

describe('what regulars miss', () => {
  const classes = [
    taught(mon, { chest: 6, lats: 1 }),
    taught(tue, { chest: 5, lats: 0.5 }),
    taught(thu, { chest: 10, lats: 5 }),
  ];

  test('worst, median and best, though the studio as a whole has enough', () => {
    expect(habitRange(classes, context())).toMatchObject({
      counted: 4,
      worst: {
        name: 'Mon class + Tue class',
        short: [{ muscle: 'lats', sets: 1.5, missingSets: 2.5 }],
        missingSets: 2.5,
        veryHigh: [],
      },
      best: { short: [], missingSets: 0 },
    });
  });

  // Above 20 weekly sets is high: Baz-Valle E et al. J Hum Kinet 2022;81:199–210.
  test('says upper ranges, since one person has that dose', () => {
    const everything = [{ name: 'all', slotIds: ['Mon', 'Tue', 'Thu'] }];
    expect(habitRange(classes, context({ slotHabits: everything }))?.worst.veryHigh).toEqual(['chest']);
  });

  test('counts a cancelled class as missed, and leaves out what is not known', () => {
    const cancelled = [taught(mon, { lats: 9 }, { state: 'cancelled' }), ...classes.slice(1)];
    expect(habitRange(cancelled, context())?.worst).toMatchObject({
      name: 'Mon class + Tue class',
      missingSets: 3.5,
    });
    const unknown = [taught(mon), ...classes.slice(1)];
    expect(habitRange(unknown, context())).toMatchObject({
      counted: 1,
      worst: { name: 'Tue class + Thu class' },
    });
    expect(habitRange([taught(mon), taught(tue), taught(thu)], context())).toBeUndefined();
  });
});
