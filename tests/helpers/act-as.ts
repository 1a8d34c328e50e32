import type { Page } from 'playwright-core';

/** As that person, at their home; a tap that comes before the page knows them is made again. */
export async function actAs(page: Page, name: string): Promise<void> {
  const person = page.getByRole('radio', { name: new RegExp(name) });
  for (let tries = 0; tries < 5; tries += 1) {
    await person.check();
    await page.waitForTimeout(500);
    await page.getByRole('button', { name: /^Home/ }).click();
    await page.getByText('Write a class').first().waitFor();
    if (await person.isChecked()) return;
  }
  throw new Error(`The page does not act as ${name}.`);
}
