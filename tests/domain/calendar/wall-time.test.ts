import { Temporal } from 'temporal-polyfill';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { instantOf, isKnownZone, wallTimeOf, zonedMoment } from '../../../domain/calendar/wall-time.ts';

afterEach(() => vi.useRealTimers());

/** Outside oracle: its `compatible` rule is that of RFC 5545, 3.3.5. */
const oracle = (date: string, time: string, zone: string): string =>
  new Date(
    Temporal.PlainDateTime.from(`${date}T${time}`).toZonedDateTime(zone, { disambiguation: 'compatible' })
      .epochMilliseconds,
  ).toISOString();

type Case = { readonly zone: string; readonly date: string; readonly time: string };

/** Wall times before, in the middle of and after every change of offset from 2026 to 2027. */
function casesOf(zone: string): readonly Case[] {
  const end = Temporal.Instant.from('2028-01-01T00:00:00Z');
  const cases: Case[] = [];
  let at = Temporal.Instant.from('2026-01-01T00:00:00Z').toZonedDateTimeISO(zone);
  for (;;) {
    const next = at.getTimeZoneTransition('next');
    if (next === null || Temporal.Instant.compare(next.toInstant(), end) >= 0) return cases;
    const before = next.subtract({ nanoseconds: 1 }).offsetNanoseconds;
    const change = Math.abs(next.offsetNanoseconds - before) / 60e9;
    const wall = next.toPlainDateTime();
    for (const minutes of [-change - 1, -change, -change / 2, -1, 0, change / 2, change, change + 1]) {
      const [date = '', clock = ''] = wall
        .add({ minutes: Math.trunc(minutes) })
        .toString()
        .split('T');
      cases.push({ zone, date, time: clock.slice(0, 5) });
    }
    at = next;
  }
}

describe('wall time to instant', () => {
  const cases = Intl.supportedValuesOf('timeZone').flatMap(casesOf);

  test('the zones of the runtime have transitions to try', () => {
    expect(cases.length).toBeGreaterThan(2_000);
  });

  test.each(['2026-01-15T12:00:00Z', '2026-07-15T12:00:00Z'])(
    'agrees with the oracle round every transition of two years, today being %s',
    (today) => {
      const expected = cases.map(({ date, time, zone }) => oracle(date, time, zone));
      vi.useFakeTimers();
      vi.setSystemTime(today);
      expect(cases.map(instantOf)).toEqual(expected);
    },
  );

  test('a bad zone is refused, not read as another one', () => {
    for (const zone of ['Europe/Atlantis', 'local', 'system', '', 'UTC+2']) {
      expect(isKnownZone(zone)).toBe(false);
      expect(() => instantOf({ date: '2026-11-23', time: '18:30', zone })).toThrow(RangeError);
    }
    expect(isKnownZone('Europe/Vienna')).toBe(true);
  });

  test.each([
    ['2026-02-30', '18:30'],
    ['2026-11-23', '25:00'],
    ['', ''],
  ])('an impossible time is refused: %s %s', (date, time) => {
    expect(() => instantOf({ date, time, zone: 'UTC' })).toThrow(RangeError);
  });

  test('reads back to the wall time, but for times that never happen', () => {
    const gap = { date: '2026-03-29', time: '02:30' };
    expect(wallTimeOf(instantOf({ ...gap, zone: 'Europe/Berlin' }), 'Europe/Berlin')).toEqual({
      ...gap,
      time: '03:30',
    });
    const evening = { date: '2026-11-23', time: '18:30' };
    expect(zonedMoment(evening, 'Asia/Kathmandu')).toEqual({
      ...evening,
      zone: 'Asia/Kathmandu',
      instant: '2026-11-23T12:45:00.000Z',
    });
    expect(wallTimeOf('2026-11-23T12:45:00.000Z', 'Asia/Kathmandu')).toEqual(evening);
  });
});
