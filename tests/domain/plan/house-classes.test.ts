import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { reportOnClass } from '../../../domain/class-report.ts';
import { houseClass, houseClassNames } from '../../../domain/plan/house-classes.ts';
import { defaultSettings } from '../../../domain/settings.ts';

const settings = {
  ...defaultSettings,
  rooms: [{ name: 'Hall', kit: { mat: 14 }, doorSeconds: 0, clearUpSeconds: 0 }],
};
const context = { catalogue, settings, now: '2026-11-23T09:00:00.000Z' };
const cases = houseClassNames.flatMap((name) =>
  [25, 30, 40, 45, 60, 75].map((minutes) => [name, minutes] as const),
);

describe('a house class', () => {
  test.each(cases)(
    '%s fills a slot of %i minutes, with nothing to mend before it is taught',
    (name, minutes) => {
      const text = houseClass(
        name,
        {
          slotSeconds: minutes * 60,
          startsAt: { date: '2026-11-26', time: '18:30' },
          people: 14,
          room: 'Hall',
        },
        context,
      );
      const report = reportOnClass(text, context);
      if (report.kind !== 'report') throw new Error(text);
      expect(report.plan.facts).toMatchObject({ people: 14, room: 'Hall', slotSeconds: minutes * 60 });
      expect(report.fit.spareSeconds).toBe(0);
      const last = report.timeline.segments.at(-1);
      const coolDown = (last?.endSeconds ?? 0) - (last?.startSeconds ?? 0);
      // ACSM: a cool-down of 5–10 minutes.
      expect(coolDown).toBeGreaterThanOrEqual(300);
      expect(coolDown).toBeLessThanOrEqual(600);
      expect(report.findings).toEqual([]);
    },
  );
});
