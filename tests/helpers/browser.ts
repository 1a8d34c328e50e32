import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

const executablePath = '/usr/bin/chromium';

/** False where no browser is installed; a browser test then skips with `noBrowserNotice`. */
export const hasBrowser: boolean = existsSync(executablePath);

export const noBrowserNotice = `skipped: no browser at ${executablePath}`;

/** Starts a headless browser that keeps to itself: no updates, no background calls. */
export const launchBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath,
    args: [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
