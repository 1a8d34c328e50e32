import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { rowAndSquat } from '../classes/row-and-squat.ts';
import { hasBrowser, noBrowserNotice } from '../helpers/browser.ts';
import { type OnAPhone, openOnAPhone, phone } from '../helpers/open-on-a-phone.ts';

/** A busy machine takes its time; nothing here waits longer than it must. */
const patience = 10_000;
/** What the field to write in takes of the screen. */
const fieldHeight = 64;

const dated = rowAndSquat.text
  .replace('Row & Squat, 40 min', 'Row & Squat, 40 min, Thu 18:30, Mill Room, aim steady pace')
  .replace('? core', 'side plank');

if (!hasBrowser) console.info(noBrowserNotice);

describe.skipIf(!hasBrowser)(
  'a draft, its edits and its review on a phone, in the product as it is started',
  { timeout: 120_000 },
  () => {
    let opened: OnAPhone;
    let page: Page;

    beforeAll(async () => {
      opened = await openOnAPhone({ patience });
      page = opened.page;
    }, 60_000);
    afterAll(() => opened.close());

    const thread = () => page.getByRole('region', { name: 'Thread' });
    const newest = () => thread().getByRole('article').last();
    const reply = async (text: string) => {
      const field = thread().getByRole('textbox');
      await field.fill(text);
      await thread().getByRole('button', { name: 'Send', exact: true }).click();
      await expect.poll(() => field.inputValue(), { timeout: patience }).toBe('');
    };
    const answered = (text: string | RegExp) =>
      expect.poll(() => newest().textContent(), { timeout: patience }).toMatch(text);
    const leaveThread = () => page.getByRole('button', { name: 'Close the thread' }).click();
    const actAs = async (name: string) => {
      const radio = page.getByRole('radio', { name: new RegExp(name) });
      await radio.check();
      await expect.poll(() => radio.isChecked(), { timeout: patience }).toBe(true);
      await page.waitForTimeout(300);
    };
    const goTo = (place: string) => opened.goTo(place);
    const lowerEdge = async (name: string | RegExp) => {
      const box = await page.getByRole('button', { name }).last().boundingBox();
      return box === null ? Number.POSITIVE_INFINITY : box.y + box.height;
    };

    test('the draft is sent from the first screen of its card', async () => {
      await page.getByRole('textbox', { name: /Message to/ }).fill(dated);
      await page.getByRole('button', { name: 'Send', exact: true }).click();
      await page.getByRole('button', { name: /1 reply/ }).click();
      await thread().getByText('40:00, exactly the teaching time').first().waitFor();
      await thread().getByRole('button', { name: 'Send for review' }).waitFor();
      expect(await lowerEdge('Send for review')).toBeLessThan(phone.height - fieldHeight);
    });

    test('what is asked is answered from the plan', async () => {
      await reply('why');
      await answered(/Checked: nothing to mend.*ACSM:.*a warm-up/s);
      await reply('muscles');
      await answered(/quadriceps 6/);
      await reply('no kit');
      await answered(/B goblet squat → bodyweight squat/);
      await reply('easier');
      await answered(/C push-up → knee push-up/);
      await reply('last time');
      await answered(/not been taught yet/);
      await reply('timeline');
      await answered(/A bent-over row/);
    });

    test('what almost is an edit is one tap, and its answer tells only what changed', async () => {
      await reply('swap B goblin squash');
      await newest().getByRole('button', { name: 'swap B goblet sumo squat' }).click();
      await answered(/B: goblet squat → goblet sumo squat/);
      expect(await newest().textContent()).not.toContain('bent-over row');
      await reply('undo');
      await answered(/Undone: this is v1 again\..*B: goblet sumo squat → goblet squat/s);
    });

    test('a coach comments on one move and asks for changes', async () => {
      await reply('send');
      await expect
        .poll(() => thread().getByText('in review').count(), { timeout: patience })
        .toBeGreaterThan(0);
      await leaveThread();
      await actAs('Tomas');
      await goTo('# class-review');
      await page.getByRole('button', { name: 'Approve v3 for teaching' }).waitFor();
      expect(await lowerEdge('Approve v3 for teaching')).toBeLessThan(phone.height - fieldHeight);
      await page.getByRole('button', { name: 'Comment on a move' }).click();
      const comment = page.getByRole('dialog', { name: 'Comment on a move' });
      await comment.getByRole('combobox').selectOption({ label: 'B goblet squat' });
      await comment.getByRole('textbox').fill('Elbows inside the knees.');
      await comment.getByRole('button', { name: 'Send to instructor' }).click();
      await comment.waitFor({ state: 'detached' });
      await page.getByText('Open comments:').waitFor();
      await page.getByRole('button', { name: 'Ask for changes' }).click();
      const ask = page.getByRole('dialog', { name: 'Ask for changes' });
      await ask.getByRole('textbox').fill('One more pull, please.');
      await ask.getByRole('button', { name: 'Send to instructor' }).click();
      await page.getByText(/Changes asked by/).waitFor();
      expect(await page.getByRole('button', { name: /Approve/ }).count()).toBe(0);
    });

    test('the comment is resolved, the change made, and sent again', async () => {
      await actAs('Mira');
      await goTo('Evenset');
      await page
        .getByRole('button', { name: /replies/ })
        .last()
        .click();
      await thread().getByText('Elbows inside the knees.').waitFor();
      await thread().getByRole('button', { name: 'Resolved' }).click();
      await thread().getByText('Resolved by').waitFor();
      expect(await thread().getByRole('button', { name: 'Resolved' }).count()).toBe(0);
      await reply('swap G bent-over row');
      await thread().getByText('G: side plank split sides → bent-over row').first().waitFor();
      await reply('send');
      await thread().getByRole('button', { name: 'Take back from review' }).first().waitFor();
      await leaveThread();
    });

    test('the coach sees what became of it and approves with a note; nothing is left to tap', async () => {
      await actAs('Tomas');
      await goTo('# class-review');
      await page.getByText('Changed since changes were asked on v3:').waitFor();
      expect(await page.getByText('Open comments:').count()).toBe(0);
      await page.getByRole('button', { name: 'Approve with a note' }).click();
      const note = page.getByRole('dialog', { name: 'Approve with a note' });
      await note.getByRole('textbox').fill('Cue the hinge early.');
      await note.getByRole('button', { name: 'Approve for teaching' }).click();
      await note.waitFor({ state: 'detached' });
      await page.getByText('Approved for teaching, structure and timing').waitFor();
      await page.getByText('Cue the hinge early.').first().waitFor();
      expect(await page.getByRole('button', { name: /Approve|Ask for changes/ }).count()).toBe(0);
      expect(await opened.width()).toBeLessThanOrEqual(phone.width);
    });
  },
);
