import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { installLocalApp } from '../../../bot/local/local-app.ts';
import { type LocalWorkspaceServer, startLocalWorkspace } from '../../../bot/local/local-server.ts';
import { createWorkspace } from '../../../bot/local/workspace.ts';
import { buildManifest } from '../../../manifest/manifest.ts';
import { openStorage } from '../../../storage/open-storage.ts';

/** More with `EVENSET_KILLS=200 npx vitest run tests/bot/wire/kill.test.ts`. */
const kills = Number(process.env.EVENSET_KILLS ?? 4);
const entry = new URL('../../../bot/main.ts', import.meta.url).pathname;
const botToken = 'xoxb-kill';
const signingSecret = 'kill-signing-secret';
const place = 'D1';

let folder: string;
let server: LocalWorkspaceServer;
let child: ChildProcess | undefined;

async function startWorkspace(appPort: number): Promise<LocalWorkspaceServer> {
  const app = installLocalApp(buildManifest({ kind: 'http', requestUrl: 'http://127.0.0.1/slack/events' }), {
    id: 'A1',
    botUserId: 'UBOT',
    botId: 'B1',
    botToken,
  });
  const workspace = createWorkspace({
    team: { id: 'T1', name: 'Morgen', domain: 'morgen' },
    people: [{ id: 'U1', name: 'Ana', role: 'instructor', timeZone: 'UTC' }],
    channels: [],
    app,
    now: () => new Date().toISOString(),
  });
  return startLocalWorkspace({
    port: 0,
    workspace,
    signingSecret,
    timeZone: 'UTC',
    pageFolder: folder,
    app: { url: `http://127.0.0.1:${appPort}/slack/events` },
    // Long enough to outlive a restart: every message is acked in the end.
    retryDelaysMs: Array.from({ length: 60 }, () => 500),
  });
}

async function freePort(): Promise<number> {
  const probe = await startWorkspace(1);
  await probe.stop();
  return Number(new URL(probe.url).port);
}

async function startApp(port: number): Promise<void> {
  const started = spawn(process.execPath, ['--import', 'tsx', entry], {
    env: {
      PATH: process.env.PATH ?? '',
      SLACK_API_URL: server.apiUrl,
      SLACK_BOT_TOKEN: botToken,
      SLACK_SIGNING_SECRET: signingSecret,
      PORT: String(port),
      EVENSET_DATA: folder,
    },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  child = started;
  await new Promise<void>((resolve, reject) => {
    let said = '';
    started.stderr.on('data', (chunk) => {
      said += String(chunk);
      if (said.includes('/slack/events')) resolve();
    });
    started.once('close', () => reject(new Error(said)));
  });
}

async function endApp(signal: NodeJS.Signals): Promise<void> {
  const ending = child;
  if (ending === undefined || ending.exitCode !== null || ending.signalCode !== null) return;
  const ended = new Promise((resolve) => ending.once('close', resolve));
  ending.kill(signal);
  await ended;
}

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'evenset-kill-'));
});
afterEach(async () => {
  await endApp('SIGKILL');
  await server.stop();
  rmSync(folder, { recursive: true });
});

const classText = (name: number) =>
  `Class ${name}, 20 min, level 2, 10 people\nwarm-up 5:00: march\ncircuit x3, 40/20\npush-up\nplank\ncool-down to the end`;

describe('a process that is killed at any moment', () => {
  test(
    `loses no message and posts no card twice (${kills} kills)`,
    async () => {
      const port = await freePort();
      server = await startWorkspace(port);
      const { workspace } = server;
      const pauses = fc.sample(fc.integer({ min: 0, max: 120 }), { numRuns: kills, seed: 7 });
      const written: string[] = [];
      for (const pauseMs of pauses) {
        await startApp(port);
        for (let each = 0; each < 3; each += 1) {
          const text = classText(written.length);
          written.push(workspace.post({ placeId: place, authorId: 'U1', text }).ts);
        }
        await new Promise((resolve) => setTimeout(resolve, pauseMs));
        await endApp('SIGKILL');
      }
      await startApp(port);
      await server.deliveries.idle();
      const cardsUnder = () =>
        written.map(
          (ts) =>
            workspace
              .listMessages(place)
              .filter(({ threadTs, authorId }) => threadTs === ts && authorId === 'UBOT').length,
        );
      // Posts to one place are a second apart.
      await expect
        .poll(cardsUnder, { timeout: 15_000 + written.length * 1_500 })
        .toEqual(written.map(() => 1));
      await endApp('SIGTERM');
      expect(cardsUnder()).toEqual(written.map(() => 1));
      const keys = workspace.listMessages(place).flatMap(({ metadata }) => metadata?.event_payload.key ?? []);
      expect(new Set(keys).size).toBe(keys.length);
      const storage = openStorage({ file: join(folder, 'evenset.sqlite') });
      expect({
        sound: storage.database.pragma('integrity_check', { simple: true }),
        links: storage.database.pragma('foreign_key_check'),
        events: await storage.deliveries.listUnfinished('T1'),
        notices: await storage.notices.listUnfinished('T1', 10),
      }).toEqual({ sound: 'ok', links: [], events: [], notices: [] });
      await storage.close();
    },
    60_000 + kills * 10_000,
  );
});
