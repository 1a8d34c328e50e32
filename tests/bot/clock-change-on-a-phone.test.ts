import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hasBrowser, noBrowserNotice } from '../helpers/browser.ts';
import { type OnAPhone, openOnAPhone } from '../helpers/open-on-a-phone.ts';

/** A busy machine takes its time; nothing here waits longer than it must. */
const patience = 10_000;

if (!hasBrowser) console.info(noBrowserNotice);

/** A message of the team channel as it is read on the page. */
type Read = { readonly day: string; readonly time: string; readonly text: string };

/** The demo's studio is in Lisbon, whose clocks go back on Sunday 25 October 2026, at two. */
describe.skipIf(!hasBrowser)('a month in which the clocks go back, on a phone', { timeout: 180_000 }, () => {
  let opened: OnAPhone;
  let page: Page;

  beforeAll(async () => {
    opened = await openOnAPhone({ patience });
    page = opened.page;
  }, 60_000);
  afterAll(() => opened.close());

  const clock = () => page.getByRole('dialog', { name: 'Move the clock' });

  /** Done once the next thing due after it is named. */
  async function moveClockTo(wallTime: string, nextDue: RegExp): Promise<void> {
    await clock().getByLabel('To a day and time').fill(wallTime);
    await clock().getByRole('button', { name: 'Go', exact: true }).click();
    await clock().getByRole('button', { name: nextDue }).waitFor({ timeout: 60_000 });
  }

  /** From due moment to due moment, up to the one of that name. */
  async function walkTo(moment: RegExp): Promise<void> {
    const next = clock().getByRole('button', { name: /Next thing due/ });
    for (let due = ''; !moment.test(due); ) {
      due = (await next.textContent()) ?? '';
      await next.click();
      await expect.poll(() => next.textContent(), { timeout: patience, interval: 20 }).not.toBe(due);
    }
  }

  async function readTeamChannel(): Promise<readonly Read[]> {
    await page.getByRole('button', { name: /^# team(,? ?\d+ new)?$/ }).click();
    await page.getByText('Week 45, 2026').first().waitFor();
    return page.evaluate(() => {
      let day = '';
      return [...document.querySelectorAll('.entry')].map((entry) => {
        day = entry.querySelector('.day')?.textContent ?? day;
        const time = entry.querySelector('header time')?.textContent ?? '';
        return { day, time, text: entry.textContent ?? '' };
      });
    });
  }

  /** Where and when a message stands that says this, in the studio's time. */
  const posted = (read: readonly Read[], said: RegExp) =>
    read.filter(({ text }) => said.test(text)).map(({ day, time }) => `${day.slice(0, -5)} ${time}`);

  test('each countdown, evening list and report stands once, at its local time', async () => {
    await page.getByRole('button', { name: /Studio clock/ }).click();
    // A move of days goes from due moment to due moment too; the days around the change are walked by hand.
    await moveClockTo('2026-10-24T12:00', /24 Oct.*14:00/);
    await walkTo(/27 Oct.*06:00/);
    await moveClockTo('2026-11-09T07:00', /9 Nov.*15:30/);
    await clock().getByRole('button', { name: 'Close Move the clock' }).click();
    const read = await readTeamChannel();
    const days = (dates: string, time: string) =>
      dates.split(', ').map((date) => `${date.length < 7 ? `${date} Oct` : date} ${time}`);
    for (const [said, moments] of [
      [/Saturday Long, [^,]+, 10:00: over/, days('Sat 17, Sat 24, Sat 31, Sat 7 Nov', '09:00')],
      [/(Monday Strong|Lower Ladder), [^,]+, 18:30: over/, days('Mon 19, Mon 26, Mon 2 Nov', '17:30')],
      [/Early Circuit, [^,]+, 07:00: over/, days('Tue 20, Tue 27, Tue 3 Nov', '06:00')],
      [/Noon (Minutes|Intervals), [^,]+, 12:30: over/, days('Wed 14, Wed 21, Wed 28, Wed 4 Nov', '11:30')],
      [/Thursday Strong, [^,]+, 18:30: over/, days('Thu 15, Thu 22, Thu 29, Thu 5 Nov', '17:30')],
      [/Week 42, 2026/, days('Mon 19', '07:00')],
      [/Week 43, 2026/, days('Mon 26', '07:00')],
      [/Week 44, 2026/, days('Mon 2 Nov', '07:00')],
      [/Week 45, 2026/, days('Mon 9 Nov', '07:00')],
      [
        /(Oct|Nov): 1 class/,
        [
          ...days('Wed 14, Fri 16, Sun 18, Mon 19, Tue 20, Wed 21, Fri 23, Sun 25, Mon 26, Tue 27', '18:00'),
          ...days(
            'Wed 28, Fri 30, Sun 1 Nov, Mon 2 Nov, Tue 3 Nov, Wed 4 Nov, Fri 6 Nov, Sun 8 Nov',
            '18:00',
          ),
        ],
      ],
    ] as const)
      expect(posted(read, said), String(said)).toEqual(moments);
    // Nothing else stands there: 18 classes, 4 reports and 18 evening lists.
    expect(read).toHaveLength(40);
    expect(await opened.width()).toBeLessThanOrEqual(390);
    expect(opened.faults).toEqual([]);
  });
});
