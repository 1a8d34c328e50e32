import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { actAs } from '../helpers/act-as.ts';
import { hasBrowser, noBrowserNotice } from '../helpers/browser.ts';
import { type OnAPhone, openOnAPhone } from '../helpers/open-on-a-phone.ts';
import { seriousFaults } from '../helpers/serious-faults.ts';

/** A busy machine takes its time; nothing here waits longer than it must. */
const patience = 20_000;

if (!hasBrowser) console.info(noBrowserNotice);

describe.skipIf(!hasBrowser)('every setting on a phone', { timeout: 180_000 }, () => {
  let opened: OnAPhone;
  let page: Page;

  beforeAll(async () => {
    opened = await openOnAPhone({ patience });
    page = opened.page;
    await actAs(page, 'Tomas');
  }, 90_000);
  afterAll(() => opened.close());

  beforeEach(async () => {
    for (let tries = 0; tries < 3 && (await dialog().count()) > 0; tries += 1) {
      await page.keyboard.press('Escape');
      await page.waitForTimeout(300);
    }
  });

  const goTo = (place: string) => opened.goTo(place);
  const dialog = () => page.getByRole('dialog');
  const field = (name: string | RegExp) => dialog().getByLabel(name).first();
  const save = () => dialog().getByRole('button', { name: 'Save' }).click();
  const says = (text: string | RegExp) => dialog().getByText(text).first().waitFor();
  const close = async () => {
    await dialog().getByRole('button', { name: 'Close', exact: true }).last().click();
    await dialog().waitFor({ state: 'detached' });
  };
  const picture = async (name: string) => {
    const folder = process.env.EVENSET_PICTURES;
    if (folder === undefined) return;
    const body = dialog().locator('.dialog-body').last();
    const scrolls = (await body.count()) > 0 ? await body.evaluate((each) => each.scrollHeight) : 0;
    await page.setViewportSize({ width: 390, height: Math.max(844, Math.min(6_000, scrolls + 200)) });
    await page.screenshot({ path: `${folder}/${name}.png` });
    await page.setViewportSize({ width: 390, height: 844 });
  };
  const expectFits = async () => expect(await opened.width()).toBeLessThanOrEqual(390);

  /** From the list of all settings into one part of it. */
  const openPart = async (part: string, first: string | RegExp) => {
    if ((await dialog().count()) === 0) await page.getByRole('button', { name: 'Settings' }).first().click();
    const row = dialog()
      .locator('.with-accessory')
      .filter({ has: page.getByText(part, { exact: true }) });
    await row.getByRole('button', { name: 'Change' }).click();
    await says(first);
    await expectFits();
  };

  /** The saved form gives way to all settings, with what was changed. */
  const saved = async (names: string) => {
    await save();
    await says(`Saved: ${names}. In force from now on.`);
    expect(
      await dialog()
        .locator('.dialog-body')
        .evaluate((each) => each.scrollTop),
    ).toBe(0);
    expect(await seriousFaults(page)).toEqual([]);
  };

  test('zone, channels and times: what is wrong is told at its field and the rest stays', async () => {
    await openPart('Zone, channels, times', 'Time zone');
    await field(/^Length of a class/).fill('');
    await field('Time zone').fill('Lisbon time');
    await field('Countdown, minutes before a class').fill('45, soon');
    await field(/^Address this app/).fill('evenset');
    await save();
    await says('Please fill this in');
    await field(/^Length of a class/).fill('40');
    await save();
    for (const told of ['No such time zone', 'one to five whole minutes', 'Write the whole address'])
      await says(told);
    await picture('studio-wrong');
    expect(await seriousFaults(page)).toEqual([]);
    expect(await field('Countdown, minutes before a class').inputValue()).toBe('45, soon');
    await field('Time zone').fill('Europe/Madrid');
    await field('Countdown, minutes before a class').fill('45, 10');
    await field(/^Address this app/).fill('https://evenset.example');
    await field(/^Review channel/).selectOption({ label: 'team' });
    await save();
    await says('Take another channel than for the team');
    await field(/^Review channel/).selectOption({ label: 'class-review' });
    await saved('time zone, length of a class that says none, countdown, address of this app');
    await picture('studio-saved');
  });

  test('roles: people, a user group beside them, trust and small edits; someone named by name stays', async () => {
    await openPart('Roles', 'Head coaches');
    const people = (of: RegExp) => dialog().getByRole('group', { name: of });
    await people(/^Head coaches/)
      .getByRole('checkbox', { name: 'Tomas' })
      .uncheck();
    await save();
    await says('Name at least one head coach or admin by name');
    await picture('roles-wrong');
    await people(/^Head coaches/)
      .getByRole('checkbox', { name: 'Tomas' })
      .check();
    await people(/^Trusted instructors/)
      .getByRole('checkbox', { name: 'Mira' })
      .check();
    await field('Head coaches: a user group beside them').selectOption({ label: '@coaches, 1 person' });
    await field('Small edits of an approved plan').selectOption({ label: 'keep the approval' });
    await dialog()
      .locator('.dialog-body')
      .last()
      .evaluate((each) => each.scrollTo(0, each.scrollHeight));
    await picture('roles-filled');
    await saved('trusted instructors, user groups with a role, small edits keep an approval');
    await openPart('Roles', 'Head coaches');
    expect(await field('Head coaches: a user group beside them').inputValue()).toBe('S0COACHES');
    expect(
      await people(/^Trusted instructors/)
        .getByRole('checkbox', { name: 'Mira' })
        .isChecked(),
    ).toBe(true);
    await close();
  });

  test('rooms: kit nobody knows and a name about someone are told; a card in the studio’s words is kept', async () => {
    await openPart('Rooms and kit', 'Mill Room');
    await dialog().getByRole('button', { name: 'Add a room' }).click();
    await field(/^Name/).fill('Ana’s bad knee');
    await field(/^Kit, a line each/).fill('dumbbell 12\ntrampoline 4');
    await save();
    await says('Not saved: "Ana’s bad knee"');
    await field(/^Name/).fill('Yard');
    await save();
    await says('“trampoline 4” is not read');
    await picture('room-wrong');
    expect(await field(/^Kit, a line each/).inputValue()).toBe('dumbbell 12\ntrampoline 4');
    await field(/^Kit, a line each/).fill('dumbbell 12\nmat 8');
    await field(/^Capacity/).fill('9');
    await field(/^Floor, square metres/).fill('40.5');
    await field('Door time, seconds').fill('60');
    await field(/^Emergency card/).fill('Injury or collapse: call from gate 2. AED left of the yard door.');
    await saved('rooms');
    await says('dumbbell 12, mat 8 · up to 9 people');
    await picture('rooms-saved');
    await close();
  });

  test('shared kit and slot habits by their names', async () => {
    await openPart('Shared kit', 'Kit that rooms share, a line each');
    await field(/^Kit that rooms share/).fill('kettlebell 16: Mill Room, Cellar');
    await save();
    await says('“Cellar” is no room. There are: Mill Room, Loft, Yard.');
    await field(/^Kit that rooms share/).fill('kettlebell 16: Mill Room, Yard');
    await saved('shared kit');
    await openPart('Slot habits', 'Slot habits, a line each');
    await field(/^Slot habits/).fill('Owls: Midnight');
    await save();
    await says('“Midnight” is no slot.');
    await picture('habits-wrong');
    await field(/^Slot habits/).fill('Early birds: Early Circuit, Sat 10:00');
    await saved('slot habits');
    await close();
  });

  test('weekly slots: half a slot is not kept, a whole one is listed, and taken away again', async () => {
    await openPart('Weekly slots', 'Monday Strong');
    await dialog().getByRole('button', { name: 'Add a slot' }).click();
    await field(/^Name/).fill('Friday Late');
    await save();
    await says('Please fill this in');
    await picture('slot-half');
    expect(await field(/^Name/).inputValue()).toBe('Friday Late');
    await field('Day').selectOption({ label: 'Fri' });
    await field('Start').fill('20:00');
    await field('Length, minutes').fill('30');
    await field(/^Room/).selectOption({ label: 'Yard' });
    await field(/^Instructor/).selectOption({ label: 'Ines' });
    await saved('weekly slots');
    await says('Fri 20:00 · 30 min · Yard');
    await picture('slots-saved');
    const row = dialog()
      .locator('.with-accessory')
      .filter({ has: page.getByText('Friday Late', { exact: true }) });
    await row.getByRole('button', { name: 'Change' }).click();
    await field('Keep or remove').selectOption({ label: 'remove' });
    await saved('weekly slots');
    expect(await dialog().getByText('Friday Late').count()).toBe(0);
    await close();
  });

  test('seconds, limits, doses and days: each with its source, none out of bounds', async () => {
    await openPart('Change-overs and floors', 'Put kit down, seconds');
    await says('Common practice; no norm for change-over times is published.');
    await field('Swap kit, seconds').fill('2.5');
    await save();
    await says('Needs a whole number');
    await field('Swap kit, seconds').fill('7');
    await saved('change-overs');
    await openPart('Limits of the checks', 'Late start told above');
    await field('Unused time told above this share').fill('3');
    await save();
    await says('A share lies between 0 and 1');
    await field('Unused time told above this share').fill('0.2');
    await saved('limits of the checks');
    await openPart('Doses, priorities, energy', 'Low below, sets a week');
    await says('Iversen VM');
    await field('Low below, sets a week').fill('12');
    await save();
    await says('Low, high and very high grow');
    await picture('dose-wrong');
    await field('Low below, sets a week').fill('5');
    const muscles = dialog().getByRole('group', { name: /^Muscles of first priority/ });
    await muscles.getByRole('checkbox', { name: 'calves' }).check();
    await field('Energy, an estimate').selectOption({ label: 'on' });
    await saved('doses, muscles of first priority, energy');
    await openPart('How long things are kept', 'Drafts never sent, days');
    await field('Drafts never sent, days').fill('0');
    await save();
    await says('Needs 1 or more');
    await field('Drafts never sent, days').fill('60');
    await saved('how long things are kept');
    await close();
  });

  test('our own moves: one without a likeness is not kept; it is added, listed and retired', async () => {
    await openPart('Our own moves', 'Add a move');
    await dialog().getByRole('button', { name: 'Add a move' }).click();
    await field('Name, as people type it').fill('yard crawl');
    await save();
    await says('Please fill this in');
    await field('Works like').selectOption({ label: 'bear crawl' });
    await field(/^Form cue/).fill('Knees low for Ana’s bad knee');
    await save();
    await says('Not saved: "Ana’s bad knee"');
    await picture('own-move-wrong');
    await field(/^Form cue/).fill('Knees low, back long');
    await save();
    await says('Added: yard crawl, like bear crawl.');
    await picture('moves');
    const row = dialog()
      .locator('.with-accessory')
      .filter({ has: page.getByText('yard crawl', { exact: true }) });
    await row.getByRole('button', { name: 'Change' }).click();
    await field('In use').selectOption({ label: 'retired: old plans stay readable' });
    await save();
    await says('Retired: yard crawl.');
    await close();
  });

  test('the help tells hearing and supervision', async () => {
    await openPart('Hearing and supervision', /NIOSH 85/);
    await says(/No ratio of people to instructor is published/);
    expect(await seriousFaults(page)).toEqual([]);
    await dialog().getByRole('button', { name: 'All settings' }).click();
    await says('Zone, channels, times');
    await close();
  });

  test('whoever goes out of the group has lost the role at the next click', async () => {
    const put = async (isIn: boolean) => {
      await goTo('What was sent');
      await page.getByRole('button', { name: 'User groups' }).click();
      const box = dialog().getByRole('group', { name: '@coaches' }).getByRole('checkbox', { name: 'Ines' });
      await (isIn ? box.check() : box.uncheck());
      await picture('user-groups');
      await expectFits();
      expect(await seriousFaults(page)).toEqual([]);
      await dialog().getByRole('button', { name: 'Done' }).click();
      await dialog().waitFor({ state: 'detached' });
    };
    /** Opened anew: a home is as it stood when it was opened. */
    const coachesHome = async () => {
      await goTo('Evenset');
      await goTo('Home');
      await page.getByRole('button', { name: 'My notices' }).waitFor();
      await page.waitForTimeout(500);
      return page.getByText('Sets by muscle and day, this week').count();
    };
    await put(true);
    await actAs(page, 'Ines');
    await expect.poll(coachesHome, { timeout: patience }).toBe(1);
    const settings = page.getByRole('button', { name: 'Settings' });
    await settings.first().click();
    await says('Zone, channels, times');
    await close();
    await actAs(page, 'Tomas');
    await put(false);
    await actAs(page, 'Ines');
    expect(await coachesHome()).toBe(0);
    expect(await settings.count()).toBe(0);
  });

  test('my data names the roles; notices are chosen, and both fit the phone', async () => {
    await actAs(page, 'Mira');
    await goTo('Evenset');
    await page.getByText('What Evenset keeps, why, and how long').first().waitFor();
    await picture('first-run');
    await goTo('Home');
    await page.getByRole('button', { name: 'My data' }).click();
    await says(/Roles: trusted instructor, instructor/);
    await picture('my-data');
    await expectFits();
    expect(await seriousFaults(page)).toEqual([]);
    await close();
    await page.getByRole('button', { name: 'My notices' }).click();
    await dialog()
      .getByRole('checkbox', { name: /how did it go/ })
      .uncheck();
    await picture('notices');
    expect(await seriousFaults(page)).toEqual([]);
    await save();
    await dialog().waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'My data' }).click();
    await says(/Notices switched off: after a class: how did it go/);
    await close();
  });

  test('the page met no error', () => {
    expect(opened.faults).toEqual([]);
  });
});
