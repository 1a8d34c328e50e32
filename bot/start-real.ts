import { randomUUID } from 'node:crypto';
import { createServer, type RequestListener } from 'node:http';
import { type Receiver, SocketModeReceiver } from '@slack/bolt';
import { catalogue } from '../domain/catalogue/catalogue.ts';
import type { Storage } from '../domain/ports.ts';
import { createBoltLogger } from './bolt-logger.ts';
import { buildApp, type EvensetApp, type Identity } from './build-app.ts';
import { type CalendarRoute, calendarPath, calendarRoute, isCalendarUrl } from './calendar-route.ts';
import { createCounters } from './counters.ts';
import { createClient } from './create-client.ts';
import { createHttpReceiver } from './create-http-receiver.ts';
import type { Env, WorkspaceAccess } from './env.ts';
import { type HealthRoute, healthRoutes, type Readiness } from './health.ts';
import { codeOf, type Log } from './log.ts';
import { type Clock, createMakeDesk } from './make-desk.ts';
import { type MetricsRoute, metricsRoute } from './metrics-route.ts';
import { type Running, StartRefused } from './running.ts';
import { applySettings, readSettingsFile, type SettingsRead } from './settings-file.ts';
import { english } from './words/en.ts';

const defaultPort = 3_000;

type UsableSettings = SettingsRead & { readonly kind: 'read' };

/** Serves a real workspace: over its socket where there is an app token, else over HTTP. */
export async function startReal(parts: {
  readonly env: Env;
  readonly access: WorkspaceAccess;
  readonly storage: Storage;
  readonly log: Log;
  /** Real milliseconds between two posts to one place. */
  readonly pacingMs?: number;
}): Promise<Running> {
  const { env, access, storage, log } = parts;
  const settings = await settingsOf(env);
  let state: 'starting' | 'serving' | 'stopping' = 'starting';
  const readiness = async (): Promise<Readiness> => {
    if (state !== 'serving') return { ready: false, reason: state };
    await storage.studios.list();
    return { ready: true };
  };
  const apiUrl = env.apiUrl === undefined ? {} : { apiUrl: env.apiUrl };
  const clientOf = () => createClient({ token: access.botToken, log, ...apiUrl });
  const clock: Clock = { now: () => new Date().toISOString() };
  const makeDesk = createMakeDesk({ clock, newId: randomUUID, words: english, catalogue });
  const counters = createCounters();
  const calendar = calendarRoute({ storage, makeDesk, log });
  const metrics = metricsRoute({ counters, storage, clock, log });
  const evenset = buildApp({
    receiver: receiverFor(access, env, log, { readiness, metrics, calendar }),
    clients: { interaction: clientOf(), background: clientOf() },
    storage,
    clock,
    newId: randomUUID,
    log,
    words: english,
    catalogue,
    counters,
    ...(parts.pacingMs === undefined ? {} : { pacingMs: parts.pacingMs }),
  });
  const known = await knowWorkspace(evenset);
  if (settings !== undefined) await takeSettings(known, settings, storage, log);
  const port = env.port ?? defaultPort;
  await (access.kind === 'http' ? evenset.start({ port, host: env.host }) : evenset.start());
  const health =
    access.kind === 'socket' && env.port !== undefined
      ? await serveRoutes(env.port, env.host, [...healthRoutes(readiness), metrics, calendar])
      : undefined;
  state = 'serving';
  return {
    lines: [
      access.kind === 'http'
        ? `Evenset serves ${known.studioName} on http://${env.host}:${port}/slack/events`
        : `Evenset serves ${known.studioName} over Socket Mode`,
    ],
    stop: async () => {
      state = 'stopping';
      await evenset.stop();
      await health?.();
    },
  };
}

function receiverFor(
  access: WorkspaceAccess,
  env: Env,
  log: Log,
  routes: {
    readonly readiness: () => Promise<Readiness>;
    readonly metrics: MetricsRoute;
    readonly calendar: CalendarRoute;
  },
): Receiver {
  if (access.kind === 'http')
    return createHttpReceiver({ signingSecret: access.signingSecret, log, ...routes });
  return new SocketModeReceiver({
    appToken: access.appToken,
    logger: createBoltLogger(log),
    ...(env.apiUrl === undefined ? {} : { installerOptions: { clientOptions: { slackApiUrl: env.apiUrl } } }),
  });
}

async function knowWorkspace(evenset: EvensetApp) {
  try {
    return await evenset.identity();
  } catch (error) {
    const code = codeOf(error) ?? 'no answer';
    throw new StartRefused([
      `The workspace did not accept the app: ${code}. Check SLACK_BOT_TOKEN and the network, then start again.`,
    ]);
  }
}

async function settingsOf({ settingsFile }: Env): Promise<UsableSettings | undefined> {
  if (settingsFile === undefined) return undefined;
  const read = await readSettingsFile(settingsFile);
  if (read.kind === 'read') return read;
  throw new StartRefused(read.problems.map((problem) => `EVENSET_SETTINGS: ${problem}`));
}

async function takeSettings(
  { studioId, studioName }: Identity,
  settings: UsableSettings,
  storage: Storage,
  log: Log,
): Promise<void> {
  const now = new Date().toISOString();
  await storage.inTransaction(async (stores) => {
    if ((await stores.studios.find(studioId)) === undefined)
      await stores.studios.save({ id: studioId, name: studioName, createdAt: now });
  });
  await applySettings(storage, studioId, settings, now, log);
}

/** Health, metrics and calendar routes alone, for an app that is reached over its socket. */
async function serveRoutes(
  port: number,
  host: string,
  routes: readonly (HealthRoute | MetricsRoute | CalendarRoute)[],
): Promise<() => Promise<void>> {
  const listener: RequestListener = (request, response) => {
    const url = request.url ?? '';
    const route = routes.find(
      ({ path, method }) =>
        method === request.method && (path === url || (path === calendarPath && isCalendarUrl(url))),
    );
    if (route !== undefined) return route.handler(request, response);
    response.writeHead(404);
    response.end();
  };
  const server = createServer(listener);
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, resolve);
  });
  return () => new Promise((resolve) => server.close(() => resolve()));
}
