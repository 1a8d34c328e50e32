import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

const root = new URL('../../', import.meta.url).pathname;

export type Product = { readonly url: string; readonly stop: () => Promise<void> };

/** Bundles app and page as `npm start` does and runs them as their own process, on a free port. */
export async function startProduct(environment: Readonly<Record<string, string>> = {}): Promise<Product> {
  const cache = join(root, 'node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'evenset-'));
  const shared = { absWorkingDir: root, bundle: true, format: 'esm', logLevel: 'warning' } as const;
  await build({
    ...shared,
    entryPoints: ['bot/main.ts'],
    platform: 'node',
    packages: 'external',
    outfile: join(folder, 'main.js'),
  });
  await build({
    ...shared,
    entryPoints: ['bot/local/page/page.tsx'],
    jsx: 'automatic',
    jsxImportSource: 'preact',
    outfile: join(folder, 'page', 'page.js'),
  });
  const child = spawn(process.execPath, [join(folder, 'main.js')], {
    env: { PATH: process.env.PATH ?? '', PORT: '0', ...environment },
  });
  const ended = new Promise<void>((resolve) => child.once('close', () => resolve()));
  const url = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stderr.on('data', (chunk) => {
      said += String(chunk);
      const address = /http:\/\/127\.0\.0\.1:\d+/.exec(said)?.[0];
      if (address !== undefined) resolve(address);
    });
    ended.then(() => reject(new Error(`The product ended before it was open: ${said}`)));
  });
  return {
    url,
    stop: async () => {
      child.kill('SIGTERM');
      await ended;
      rmSync(folder, { recursive: true });
    },
  };
}
