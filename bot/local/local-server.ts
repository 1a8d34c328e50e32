import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { join } from 'node:path';
import { ZodError } from 'zod';
import { answerInPlace } from './answer-in-place.ts';
import { createDeliveries, type Deliveries } from './deliveries-to-app.ts';
import { createFaults, type Faults } from './faults.ts';
import {
  answerJson,
  answerText,
  firstPart,
  isFromHere,
  parseJson,
  readArguments,
  readable,
  readBody,
} from './http-parts.ts';
import type { DueMoments, LocalClock } from './local-clock.ts';
import { createPageApi } from './page-api.ts';
import { pageDocument, pagePolicy } from './page-document.ts';
import type { ApiAnswer } from './read-content.ts';
import { createTraffic, type Traffic } from './traffic.ts';
import { answerApiCall } from './web-api.ts';
import type { Workspace } from './workspace.ts';

/** The app that runs against the workspace. */
export type ConnectedApp = {
  /** Where it takes events and interactions, `http://127.0.0.1:…/slack/events`. */
  readonly url: string;
  /** What a move of the clock walks through. */
  readonly dueMoments?: DueMoments;
  /** Brings the app's own data back to the start, after the workspace and its clock; without it there is no reset. */
  readonly onReset?: () => Promise<void>;
};

export type LocalWorkspaceOptions = {
  readonly host?: string;
  /** 0 takes any free port. */
  readonly port: number;
  readonly workspace: Workspace;
  readonly signingSecret: string;
  /** Left out where the app runs on real time; the page then has no clock control. */
  readonly clock?: LocalClock;
  /** The studio's zone: the page shows the clock in it. */
  readonly timeZone: string;
  /** The folder with the built `page.js` and `page.css`. */
  readonly pageFolder: string;
  readonly app?: ConnectedApp;
  readonly retryDelaysMs?: readonly number[];
};

export type LocalWorkspaceServer = {
  readonly url: string;
  /** For `clientOptions.slackApiUrl`. */
  readonly apiUrl: string;
  readonly workspace: Workspace;
  readonly deliveries: Deliveries;
  readonly traffic: Traffic;
  readonly connectApp: (app: ConnectedApp) => void;
  readonly failNext: Faults['failNext'];
  /** Switches the platform's one post a second and channel on or off; off at first. */
  readonly limitPosts: (isOn: boolean) => void;
  readonly stop: () => Promise<void>;
};

/** Starts the workspace's server: the Web API, response addresses, the page and its live updates. */
export const startLocalWorkspace = async (options: LocalWorkspaceOptions): Promise<LocalWorkspaceServer> => {
  const { workspace, clock } = options;
  const host = options.host ?? '127.0.0.1';
  const faults = createFaults();
  const lastPostAt = new Map<string, number>();
  const watchers = new Set<ServerResponse>();
  let app = options.app;
  let isLimiting = false;
  let url = '';

  let announcement: NodeJS.Timeout | undefined;
  const announce = () => {
    announcement ??= setTimeout(() => {
      announcement = undefined;
      for (const watcher of watchers) watcher.write('data: change\n\n');
    }, 30);
  };
  workspace.onChange(announce);
  clock?.onMove(announce);
  const traffic = createTraffic(announce);
  if (clock !== undefined && app?.dueMoments !== undefined) clock.follow(app.dueMoments);

  const deliveries = createDeliveries({
    workspace,
    appUrl: () => app?.url,
    signingSecret: options.signingSecret,
    baseUrl: () => url,
    traffic,
    ...(options.retryDelaysMs === undefined ? {} : { retryDelaysMs: options.retryDelaysMs }),
  });

  const pageApi = createPageApi({
    workspace,
    deliveries,
    traffic,
    clock,
    timeZone: options.timeZone,
    isAppConnected: () => app !== undefined,
    reset: () => {
      const resetApp = app?.onReset;
      if (resetApp === undefined) return undefined;
      return async () => {
        await deliveries.idle();
        await app?.dueMoments?.settle();
        workspace.reset();
        clock?.reset();
        traffic.clear();
        await resetApp();
        workspace.markAllRead();
      };
    },
  });

  const isTooSoon = (method: string, args: Readonly<Record<string, unknown>>): boolean => {
    if (!isLimiting || method !== 'chat.postMessage') return false;
    const channel = String(args.channel);
    const isSoon = Date.now() - (lastPostAt.get(channel) ?? 0) < 1_000;
    if (!isSoon) lastPostAt.set(channel, Date.now());
    return isSoon;
  };

  const answerApi = (request: IncomingMessage, response: ServerResponse, method: string, body: Buffer) => {
    const started = performance.now();
    const { args, token } = readArguments(request, body);
    const log = (outcome: string, answer?: ApiAnswer) =>
      traffic.add({
        at: new Date().toISOString(),
        direction: 'from-app',
        name: method,
        outcome,
        isFine: answer?.ok === true && outcome === 'ok',
        milliseconds: Math.round(performance.now() - started),
        sent: readable(args),
        answered: answer,
      });
    const fault = faults.take(method);
    if (fault === '429' || isTooSoon(method, args)) {
      log('ratelimited');
      return answerJson(response, 429, { ok: false, error: 'ratelimited' }, { 'retry-after': '1' });
    }
    if (fault === '500') {
      log('answered 500');
      return answerText(response, 500, 'text/plain', 'internal error');
    }
    if (fault === 'hang') return log('no answer');
    const answer = answerApiCall({ method, args, token }, workspace, url);
    if (fault === 'lost-answer') {
      log('answer lost', answer);
      return response.destroy();
    }
    if (fault === 'broken-json') {
      log('broken answer', answer);
      return answerText(response, 200, 'application/json', '{"ok":tru');
    }
    log(answer.ok ? 'ok' : String(answer.error), answer);
    return answerJson(response, 200, answer, { 'x-oauth-scopes': workspace.app.scopes.join(',') });
  };

  const answerResponseUrl = (response: ServerResponse, id: string, body: Buffer) => {
    const sent = parseJson(body.toString());
    const use = workspace.useResponse(id);
    const answer =
      use.kind === 'ok' ? answerInPlace(use.grant, sent, workspace) : { ok: false, error: use.error };
    traffic.add({
      at: new Date().toISOString(),
      direction: 'from-app',
      name: 'response_url',
      outcome: answer.ok ? 'ok' : String(answer.error),
      isFine: answer.ok,
      milliseconds: 0,
      sent,
      answered: answer,
    });
    if (answer.ok) return answerText(response, 200, 'text/plain', 'ok');
    return answerJson(response, use.kind === 'refused' ? 404 : 400, answer);
  };

  const answerUpload = async (
    request: IncomingMessage,
    response: ServerResponse,
    id: string,
    body: Buffer,
  ) => {
    const file = workspace.findFile(id);
    if (file === undefined || file.isComplete)
      return answerText(response, 404, 'text/plain', 'no such upload');
    const type = request.headers['content-type'] ?? '';
    workspace.changeFile({
      ...file,
      bytes: type.startsWith('multipart/') ? await firstPart(body, type) : body,
    });
    return answerText(response, 200, 'text/plain', `OK - ${body.length}`);
  };

  const answerFile = (response: ServerResponse, id: string) => {
    const file = workspace.findFile(id);
    if (file?.bytes === undefined || !file.isComplete)
      return answerText(response, 404, 'text/plain', 'no such file');
    const isPng = file.bytes.subarray(0, 4).equals(Buffer.from([0x89, 0x50, 0x4e, 0x47]));
    return answerText(response, 200, isPng ? 'image/png' : 'application/octet-stream', file.bytes, {
      ...(isPng
        ? {}
        : { 'content-disposition': `attachment; filename*=UTF-8''${encodeURIComponent(file.name)}` }),
    });
  };

  const answerGet = async (request: IncomingMessage, response: ServerResponse, address: URL) => {
    const [, room = '', name = ''] = address.pathname.split('/');
    if (address.pathname === '/' || room === 'archives')
      return answerText(response, 200, 'text/html; charset=utf-8', pageDocument, {
        'content-security-policy': pagePolicy,
        'referrer-policy': 'no-referrer',
      });
    if (room === 'page' && (name === 'page.js' || name === 'page.css')) {
      const body = await readFile(join(options.pageFolder, name));
      const type = name === 'page.js' ? 'text/javascript' : 'text/css';
      return answerText(response, 200, `${type}; charset=utf-8`, body, { 'cache-control': 'no-cache' });
    }
    if (room === 'files') return answerFile(response, name);
    if (room === 'local' && name === 'live') {
      response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-cache' });
      response.write('data: change\n\n');
      watchers.add(response);
      request.on('close', () => watchers.delete(response));
      return undefined;
    }
    const answer = room === 'local' ? await pageApi.get(name, address.searchParams) : undefined;
    return answer === undefined
      ? answerText(response, 404, 'text/plain', 'not here')
      : answerJson(response, 200, answer, { 'cache-control': 'no-store' });
  };

  const answerPost = async (request: IncomingMessage, response: ServerResponse, address: URL) => {
    const [, room = '', name = ''] = address.pathname.split('/');
    const body = await readBody(request);
    if (body === undefined) return answerText(response, 413, 'text/plain', 'too large');
    if (room === 'api') return answerApi(request, response, name, body);
    if (room === 'response') return answerResponseUrl(response, name, body);
    if (room === 'upload') return answerUpload(request, response, name, body);
    if (room !== 'local') return answerText(response, 404, 'text/plain', 'not here');
    // A form of another page can't send this type without asking first.
    if (!(request.headers['content-type'] ?? '').startsWith('application/json'))
      return answerText(response, 415, 'text/plain', 'JSON only');
    const answer = await pageApi.post(name, parseJson(body.toString()));
    return answer === undefined
      ? answerText(response, 404, 'text/plain', 'not here')
      : answerJson(response, 200, answer);
  };

  const server = createServer((request, response) => {
    const address = new URL(request.url ?? '/', 'http://127.0.0.1');
    if (!isFromHere(request)) return answerText(response, 403, 'text/plain', 'only from this machine');
    const answer =
      request.method === 'POST'
        ? answerPost(request, response, address)
        : answerGet(request, response, address);
    answer.catch((error: unknown) => {
      if (response.headersSent) return response.destroy();
      return error instanceof ZodError
        ? answerText(response, 400, 'text/plain', 'malformed request')
        : answerText(response, 500, 'text/plain', error instanceof Error ? error.message : 'failed');
    });
    return undefined;
  });

  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(options.port, host, resolve);
  });
  const bound = server.address();
  const port = typeof bound === 'object' && bound !== null ? bound.port : options.port;
  url = `http://${host === '0.0.0.0' ? '127.0.0.1' : host.includes(':') ? `[${host}]` : host}:${port}`;

  return {
    url,
    apiUrl: `${url}/api/`,
    workspace,
    deliveries,
    traffic,
    connectApp: (connected) => {
      app = connected;
      if (connected.dueMoments !== undefined) clock?.follow(connected.dueMoments);
      announce();
    },
    failNext: faults.failNext,
    limitPosts: (isOn) => {
      isLimiting = isOn;
      lastPostAt.clear();
    },
    stop: async () => {
      clearTimeout(announcement);
      deliveries.stop();
      const closed = new Promise<void>((resolve) => server.close(() => resolve()));
      server.closeAllConnections();
      await closed;
    },
  };
};
