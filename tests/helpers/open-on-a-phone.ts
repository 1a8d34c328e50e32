import type { Page } from 'playwright-core';
import { launchBrowser } from './browser.ts';
import { startProduct } from './start-product.ts';

export const phone = { width: 390, height: 844 } as const;

export type OnAPhone = {
  readonly page: Page;
  /** What went wrong in the page itself, as it comes. */
  readonly faults: readonly string[];
  /** To a channel, the direct message or the home. */
  readonly goTo: (place: string) => Promise<void>;
  /** Pixels the page takes; more than the phone's is a sideways scroll. */
  readonly width: () => Promise<number>;
  readonly close: () => Promise<void>;
};

/** The product as it is started, in a browser as wide as a phone. `patience`: what a step may take, ms. */
export async function openOnAPhone({ patience }: { readonly patience: number }): Promise<OnAPhone> {
  const product = await startProduct();
  const browser = await launchBrowser();
  const context = await browser.newContext({ viewport: phone, hasTouch: true, isMobile: true });
  const page = await context.newPage();
  const faults: string[] = [];
  page.setDefaultTimeout(patience);
  page.on('pageerror', (error) => faults.push(error.message));
  await page.goto(product.url);
  return {
    page,
    faults,
    goTo: (place) => page.getByRole('button', { name: new RegExp(`^${place}(,? ?\\d+ new)?$`) }).click(),
    width: () => page.evaluate(() => document.documentElement.scrollWidth),
    close: async () => {
      await browser.close();
      await product.stop();
    },
  };
}
