import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { actAs } from '../helpers/act-as.ts';
import { hasBrowser, noBrowserNotice } from '../helpers/browser.ts';
import { type OnAPhone, openOnAPhone } from '../helpers/open-on-a-phone.ts';
import { seriousFaults } from '../helpers/serious-faults.ts';

/** A busy machine takes its time; nothing here waits longer than it must. */
const patience = 10_000;

const crawls = `Crawls, 30 min
warm-up 6:00: march, hip hinge
circuit x3, 40/20
yard crawl
goblet squat
cool-down to the end`;

if (!hasBrowser) console.info(noBrowserNotice);

describe.skipIf(!hasBrowser)('setting the studio up on a phone', { timeout: 120_000 }, () => {
  let opened: OnAPhone;
  let page: Page;

  beforeAll(async () => {
    opened = await openOnAPhone({ patience });
    page = opened.page;
  }, 60_000);
  afterAll(() => opened.close());

  const goTo = (place: string) => opened.goTo(place);
  const write = async (text: string) => {
    await page.getByRole('textbox', { name: /Message to/ }).fill(text);
    await page.getByRole('button', { name: 'Send', exact: true }).click();
  };
  const dialog = () => page.getByRole('dialog');
  const expectFitsThePhone = async () => {
    expect(await opened.width()).toBeLessThanOrEqual(390);
  };
  const picture = async (name: string) => {
    const folder = process.env.EVENSET_PICTURES;
    if (folder !== undefined) await page.screenshot({ path: `${folder}/${name}.png` });
  };

  test('a coach’s home has the week’s muscles in numbers, and nothing runs out of the screen', async () => {
    await actAs(page, 'Tomas');
    await page.getByText('Sets by muscle and day, this week').waitFor();
    const table = page.locator('pre', { hasText: 'upper back' });
    await table.waitFor();
    expect(await table.evaluate((each) => each.scrollWidth <= each.clientWidth)).toBe(true);
    await expectFitsThePhone();
    await picture('home');
    expect(await seriousFaults(page)).toEqual([]);
  });

  test('a wrong zone is told in the form and keeps what was filled in; the right one is saved and said', async () => {
    await page.getByRole('button', { name: 'Settings' }).first().click();
    await dialog().getByText('Zone, channels, times').waitFor();
    await picture('settings');
    await expectFitsThePhone();
    await dialog().getByRole('button', { name: 'Change' }).first().click();
    const zone = dialog().getByRole('textbox', { name: 'Time zone' });
    await zone.fill('Nowhere');
    await dialog()
      .getByRole('textbox', { name: /Countdown/ })
      .fill('45, 10');
    await dialog().getByRole('button', { name: 'Save' }).click();
    await dialog().getByText('No such time zone').waitFor();
    await picture('settings-wrong');
    expect(
      await dialog()
        .getByRole('textbox', { name: /Countdown/ })
        .inputValue(),
    ).toBe('45, 10');
    await zone.fill('Europe/Madrid');
    expect(await seriousFaults(page)).toEqual([]);
    await dialog().getByRole('button', { name: 'Save' }).click();
    await dialog().getByText('Saved: time zone, countdown.').waitFor();
    await picture('settings-saved');
    await dialog().getByRole('button', { name: 'Close', exact: true }).last().click();
  });

  test('an instructor meets a move nobody knows and adds it as the studio’s own', async () => {
    await actAs(page, 'Mira');
    await goTo('Evenset');
    await page.getByText('What Evenset keeps, why, and how long').first().waitFor();
    await write(crawls);
    await page
      .getByRole('button', { name: /1 reply/ })
      .last()
      .click();
    await picture('problem');
    await page.getByRole('button', { name: 'Add as our own move' }).click();
    await dialog().getByRole('combobox', { name: 'Works like' }).selectOption({ label: 'bear crawl' });
    await picture('own-move');
    await expectFitsThePhone();
    await dialog().getByRole('button', { name: 'Save' }).click();
    await page.getByRole('button', { name: 'Send for review' }).first().waitFor();
    await picture('own-move-card');
  });

  test('the page met no error', () => {
    expect(opened.faults).toEqual([]);
  });
});
