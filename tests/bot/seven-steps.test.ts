import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { rowAndSquat } from '../classes/row-and-squat.ts';
import { hasBrowser, noBrowserNotice } from '../helpers/browser.ts';
import { type OnAPhone, openOnAPhone } from '../helpers/open-on-a-phone.ts';

/** A busy machine takes its time; nothing here waits longer than it must. */
const patience = 8_000;

const mistyped = `Lift & Carry, 30 min, Thu 18:30, Mill Room
warm-up 5:00
circuit x3, 40/20
goblin squash
gobelt squat
press
cool-down 5:00`;

if (!hasBrowser) console.info(noBrowserNotice);

describe.skipIf(!hasBrowser)(
  'the main job on a phone, in the product as it is started',
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
    const write = async (text: string) => {
      await page.getByRole('textbox', { name: /Message to/ }).fill(text);
      await page.getByRole('button', { name: 'Send', exact: true }).click();
    };
    const reply = async (text: string) => {
      await thread().getByRole('textbox').fill(text);
      await thread().getByRole('button', { name: 'Send', exact: true }).click();
    };
    const leaveThread = () => page.getByRole('button', { name: 'Close the thread' }).click();
    const actAs = async (name: string) => {
      await page.getByRole('radio', { name: new RegExp(name) }).check();
      await expect
        .poll(() => page.getByRole('radio', { name: new RegExp(name) }).isChecked(), { timeout: patience })
        .toBe(true);
      await page.waitForTimeout(200);
    };
    const goTo = (place: string) => opened.goTo(place);
    const moveClockTo = async (moment: RegExp) => {
      await page.getByRole('button', { name: /Studio clock/ }).click();
      const clock = page.getByRole('dialog', { name: 'Move the clock' });
      for (let moves = 0; moves < 60; moves += 1) {
        const next = clock.getByRole('button', { name: /Next thing due/ });
        const due = (await next.textContent()) ?? '';
        await next.click();
        await expect.poll(async () => next.textContent(), { timeout: patience }).not.toBe(due);
        if (moment.test(due)) break;
      }
      await clock.getByRole('button', { name: 'Close Move the clock' }).click();
    };
    const expectFitsThePhone = async () => {
      expect(await opened.width()).toBeLessThanOrEqual(390);
    };
    const expectNoBarrier = async () => {
      await page.evaluate(axe.source);
      const found: string[] = await page.evaluate(async () => {
        const results = await Reflect.get(window, 'axe').run(document);
        return results.violations
          .filter((each: { impact: string }) => each.impact === 'serious' || each.impact === 'critical')
          .map((each: { id: string }) => each.id);
      });
      expect(found).toEqual([]);
    };

    test('1: a whole class written in the direct message has its card in the thread under it', async () => {
      await write(rowAndSquat.text);
      await page.getByRole('button', { name: /1 reply/ }).click();
      await thread().getByText('40:00, exactly the teaching time').first().waitFor();
      const card = ((await thread().textContent()) ?? '').replace(/\s+/g, ' ');
      expect(card).toContain('5:40 straight x3, 40/20 · 2.4:1');
      expect(card).toContain('Work 14:40 · rest 11:15');
      expect(card).toContain('8:05 cool-down to the end');
      expect(card).toMatch(/Interval sets glutes 7½ · chest 7/);
      await thread().getByRole('button', { name: 'Full timeline' }).click();
      const view = page.getByRole('dialog', { name: 'Full timeline' });
      await view.getByText('A bent-over row').first().waitFor();
      await expectNoBarrier();
      await expectFitsThePhone();
      await view.getByRole('button', { name: 'Close', exact: true }).click();
      await view.waitFor({ state: 'detached' });
    });

    test('4: edits in the thread answer with what changed; undo and redo', async () => {
      await reply('swap G side plank');
      await thread().getByText('G: ? core → side plank').waitFor();
      await reply('rounds E x4');
      await thread().getByText('circuit x3, 30/15 → circuit x4, 30/15').waitFor();
      await reply('undo');
      await thread().getByText('Undone: this is v2 again.').waitFor();
      await reply('redo');
      await thread().getByText('Redone: this is v3 again.').waitFor();
      await expectFitsThePhone();
      await leaveThread();
    });

    test('2: mistyped lines are all told at once and mended one at a time', async () => {
      await write(mistyped);
      await page
        .getByRole('button', { name: /1 reply/ })
        .last()
        .click();
      await thread().getByText('I don\'t know the move "goblin squash"').waitFor();
      await thread().getByText('"press" may be several moves').waitFor();
      await thread().getByText('gobelt squat read as goblet squat').waitFor();
      await thread().getByRole('button', { name: 'Use goblet squat', exact: true }).click();
      await reply('line 6: dumbbell shoulder press');
      await thread().getByRole('button', { name: 'Full timeline' }).waitFor();
    });

    test('3: an exact fit is one tap', async () => {
      const proposal = thread()
        .getByRole('button', { name: /Fit exactly/ })
        .first();
      await proposal.click();
      await thread().getByText('30:00, exactly the teaching time').first().waitFor();
      await expectFitsThePhone();
    });

    test('5: on the calendar, sent for review, approved by the head coach alone', async () => {
      await thread().getByRole('button', { name: 'Change date, time or room' }).click();
      const form = page.getByRole('dialog', { name: 'Put on the calendar' });
      await form.getByLabel(/People/).fill('14');
      await form.getByRole('button', { name: 'Save' }).click();
      await form.waitFor({ state: 'detached' });
      await thread().getByRole('button', { name: 'Send for review' }).first().click();
      await thread().getByText('in review').first().waitFor();
      await leaveThread();

      await goTo('# class-review');
      await page.getByRole('button', { name: /Approve v\d+ for teaching/ }).click();
      await page.getByText('Only a head coach approves a plan').waitFor();
      await actAs('Tomas');
      await page.getByRole('button', { name: 'Ask for changes' }).click();
      const ask = page.getByRole('dialog', { name: 'Ask for changes' });
      await ask.getByRole('textbox').fill('One more pull, please.');
      await ask.getByRole('button', { name: 'Send to instructor' }).click();
      await page.getByText(/Changes asked by/).waitFor();

      await actAs('Mira');
      await goTo('Evenset');
      await page
        .getByRole('button', { name: /replies/ })
        .last()
        .click();
      await thread().getByText('One more pull, please.').waitFor();
      await reply('swap A bent-over row');
      await thread().getByText('A: goblet squat → bent-over row').waitFor();
      await thread().getByRole('button', { name: 'Send for review' }).last().click();
      await leaveThread();

      await actAs('Tomas');
      await goTo('# class-review');
      await page.getByRole('button', { name: /Approve v\d+ for teaching/ }).click();
      await page.getByText('Approved for teaching, structure and timing').waitFor();
      await expectFitsThePhone();
      await expectNoBarrier();
    });

    test('6: the countdown, on now, and how it went', async () => {
      await moveClockTo(/Thu 15 Oct, 17:30/);
      await goTo('# team');
      await page
        .getByText(/Lift & Carry, 18:30, in 60 min/)
        .first()
        .waitFor();
      await page
        .getByText(/Lay out for 14: 28 dumbbells/)
        .first()
        .waitFor();
      await moveClockTo(/Thu 15 Oct, 18:30/);
      await page
        .getByText(/Lift & Carry, 18:30, on now/)
        .first()
        .waitFor();
      await moveClockTo(/Thu 15 Oct, 19:00/);
      await actAs('Mira');
      await goTo('Evenset');
      await page
        .getByText(/Lift & Carry, Thu 15 Oct, 18:30: how did it go/)
        .first()
        .waitFor();
      await page.getByRole('button', { name: 'Taught as planned' }).last().click();
      await page.getByRole('combobox').last().selectOption({ label: '7' });
      await page
        .getByText(/your estimate: 7 of 10/)
        .first()
        .waitFor();
      await page.getByRole('button', { name: 'On time' }).last().click();
      await page
        .getByText(/7 of 10 · on time/)
        .first()
        .waitFor();
    });

    test('7: the report on Monday at seven, and the week for the asker alone', async () => {
      await moveClockTo(/Mon 19 Oct, 07:00/);
      await goTo('# team');
      await page.getByRole('heading', { name: /Week 42/ }).waitFor();
      await page.getByText('Under-trained').first().waitFor();
      await page
        .getByText(/To mend it, in .*: swap/)
        .first()
        .waitFor();
      await page.getByRole('button', { name: /repl/ }).last().click();
      await thread().getByRole('figure').waitFor();
      await thread()
        .getByText(/at least 4 are wanted/)
        .first()
        .waitFor();
      await expectFitsThePhone();
      await expectNoBarrier();
      await leaveThread();
      await goTo('Evenset');
      await write('/evenset week');
      await page.getByText('Only you can see this').last().waitFor();
      expect(opened.faults).toEqual([]);
    });
  },
);
