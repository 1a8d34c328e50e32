import { Server } from 'node:http';
import { App, type Receiver, type ViewResponseAction, type ViewSubmitAction } from '@slack/bolt';
import type { WebClient } from '@slack/web-api';
import type { Catalogue } from '../domain/catalogue/catalogue.ts';
import type { Storage } from '../domain/ports.ts';
import { createCarryOut } from './answers.ts';
import { createBoltLogger } from './bolt-logger.ts';
import { type Counters, countDrafts, createCounters } from './counters.ts';
import { createDeliveries } from './deliveries.ts';
import { handlers as allHandlers } from './handlers.ts';
import type { Desk, Handler, Handlers, Reaction, ViewAck } from './handling.ts';
import { type BeforeApp, interceptReceiver } from './intercept-receiver.ts';
import { createKeepUserGroups } from './keep-user-groups.ts';
import { errorFacts, type Log } from './log.ts';
import { type Clock, createMakeDesk } from './make-desk.ts';
import { type BackOff, defaultBackOff } from './notices/back-off.ts';
import { createClockLoop, type Due } from './notices/clock-loop.ts';
import { enqueueDue, nextDueAt } from './notices/due-in-studio.ts';
import { createSender } from './notices/sender.ts';
import { withCare } from './notices/with-care.ts';
import { createOnError } from './on-error.ts';
import { createReadUserGroups } from './read-user-groups.ts';
import { type RealTime, realTime as systemTime } from './real-time.ts';
import { readAnyAsker } from './requests/incoming.ts';
import { readAction } from './requests/read-action.ts';
import { readCommand } from './requests/read-command.ts';
import { type IncomingEvent, readEvent } from './requests/read-event.ts';
import { readShortcut } from './requests/read-shortcut.ts';
import { readView } from './requests/read-view.ts';
import { createServe } from './serve.ts';
import { createTellAsker } from './tell-asker.ts';
import type { Words } from './words/words.ts';

export type AppParts = {
  readonly receiver: Receiver;
  /** Two, since a rate limit on posts must not hold up a form that is to open. */
  readonly clients: { readonly interaction: WebClient; readonly background: WebClient };
  readonly storage: Storage;
  readonly clock: Clock;
  readonly newId: () => string;
  readonly log: Log;
  readonly words: Words;
  readonly catalogue: Catalogue;
  readonly handlers?: Handlers;
  readonly due?: Due;
  readonly realTime?: RealTime;
  /** A number in [0, 1) that spreads repeated tries. */
  readonly chance?: () => number;
  /** Real milliseconds between two posts to one place. */
  readonly pacingMs?: number;
  readonly backOff?: BackOff;
  readonly counters?: Counters;
};

export type Identity = {
  readonly studioId: string;
  readonly studioName: string;
  readonly botUserId: string;
  readonly botId: string;
  /** The workspace's own address. */
  readonly url?: string;
};

export type EvensetApp = {
  readonly app: App;
  /** Who the app is; asked of the workspace once. */
  readonly identity: () => Promise<Identity>;
  /** Runs what was left unfinished, then listens. Resolves to the port where there is one. */
  readonly start: (listen?: { readonly port: number; readonly host: string }) => Promise<number | undefined>;
  /** Takes nothing new, ends what is under way; safe to call twice. Storage stays open. */
  readonly stop: () => Promise<void>;
  /** Enqueues what is due at the clock's now. */
  readonly tick: () => Promise<void>;
  readonly nextDueAt: () => Promise<string | undefined>;
  /** Resolves when no request is under way, all that is due is enqueued and the outbox is empty. */
  readonly settle: () => Promise<void>;
};

/** The one way to make the app; main, the local workspace and tests differ in what they pass. */
export function buildApp(parts: AppParts): EvensetApp {
  const { clock, newId, log, words, catalogue } = parts;
  const counters = parts.counters ?? createCounters();
  const storage = countDrafts(parts.storage, counters);
  const handlers = parts.handlers ?? allHandlers;
  const realTime = parts.realTime ?? systemTime;
  const { interaction, background } = parts.clients;
  const { faults } = words;

  let workspaceUrl: string | undefined;
  const makeDesk = createMakeDesk({ clock, newId, words, catalogue, workspaceUrl: () => workspaceUrl });
  const deliveries = createDeliveries(storage, makeDesk);
  const tellAsker = createTellAsker(interaction);
  const onError = createOnError({ storage, log, words, tellAsker, newId });
  const sender = createSender({
    storage,
    client: background,
    makeDesk,
    words,
    now: clock.now,
    realTime,
    chance: parts.chance ?? Math.random,
    pacingMs: parts.pacingMs ?? 1_000,
    backOff: parts.backOff ?? defaultBackOff,
    counters,
    log,
  });
  const readUserGroups = createReadUserGroups({ client: interaction, storage, log });
  const keepUserGroups = createKeepUserGroups({ storage, makeDesk, realTime, readUserGroups });
  const loop = createClockLoop({
    storage,
    makeDesk,
    clock,
    realTime,
    log,
    due: parts.due ?? withCare({ enqueueDue, nextDueAt }),
    afterTick: async () => {
      sender.kick();
      await rerunFailed();
      // Not waited for: a workspace that is slow to answer holds up no notice.
      track(keepUserGroups()).then(sender.kick, (error: unknown) =>
        log.error('user groups not kept', errorFacts(error)),
      );
    },
  });
  const serve = createServe({
    storage,
    deliveries,
    carryOut: createCarryOut({ client: interaction, sender, readUserGroups, tellAsker, onError, words }),
    onError,
    log,
    realTime,
    afterChange: () => {
      sender.kick();
      loop.touch();
    },
  });

  const inFlight = new Set<Promise<unknown>>();
  const track = <Result>(work: Promise<Result>): Promise<Result> => {
    inFlight.add(work);
    return work.finally(() => inFlight.delete(work));
  };

  let known: Promise<Identity> | undefined;
  const identity = (): Promise<Identity> => {
    known ??= askIdentity(interaction).then(
      (self) => {
        workspaceUrl = self.url;
        return self;
      },
      (error: unknown) => {
        known = undefined;
        throw error;
      },
    );
    return known;
  };

  const tellAlone = (text: string) => async (): Promise<Reaction> => ({
    answers: [{ kind: 'only to you', message: { text } }],
  });

  const workFor = <Request>(
    table: Readonly<Record<string, Handler<Request>>>,
    name: string,
    request: Request,
    unknown: string,
  ): ((desk: Desk) => Promise<Reaction>) => {
    const handler = Object.hasOwn(table, name) ? table[name] : undefined;
    return handler === undefined ? tellAlone(unknown) : (desk) => handler(request, desk);
  };

  const workForEvent =
    ({ request }: IncomingEvent) =>
    (desk: Desk): Promise<Reaction> => {
      switch (request.kind) {
        case 'home':
          return handlers.home(request, desk);
        case 'left':
          return handlers.left(request, desk);
        case 'groups':
          return handlers.groups(request, desk);
        case 'message':
          return handlers.message(request, desk);
      }
    };

  /** Events that are kept but could not be decided; run again with the next tick. */
  const failed = new Map<string, { readonly incoming: IncomingEvent; readonly body: unknown }>();

  const decideEvent = async (incoming: IncomingEvent, body: unknown): Promise<void> => {
    failed.delete(incoming.key);
    const isOver = await serve.event(incoming, workForEvent(incoming));
    if (!isOver) failed.set(incoming.key, { incoming, body });
  };

  const rerunFailed = async (): Promise<void> => {
    for (const { incoming, body } of [...failed.values()]) await track(decideEvent(incoming, body));
  };

  const beforeApp: BeforeApp = async (event, next) => {
    const { body } = event;
    if (body.event === undefined) return track(next(event));
    const incoming = readEvent(body, await identity());
    if (incoming === undefined) return event.ack();
    let isNew: boolean;
    try {
      isNew = await deliveries.keepEvent(incoming, body);
    } catch (error) {
      // Left without an ack, so that the workspace delivers it again.
      await serve.notKept(incoming, error);
      throw error;
    }
    return isNew || failed.has(incoming.key) ? track(next(event)) : event.ack();
  };

  const app = new App({
    receiver: interceptReceiver(parts.receiver, beforeApp),
    authorize: async () => {
      const { botUserId, botId } = await identity();
      return { botUserId, botId };
    },
    logger: createBoltLogger(log),
    convoStore: false,
    ignoreSelf: false,
    extendedErrorHandler: true,
  });

  const readOrTell = async <Read>(
    what: string,
    read: (body: unknown) => Read,
    body: unknown,
    ack: () => Promise<void>,
  ): Promise<Read | undefined> => {
    try {
      return read(body);
    } catch (error) {
      await ack();
      await serve.unreadable(what, error, readAnyAsker(body));
      return undefined;
    }
  };

  app.command(/.*/, async ({ body, ack }) => {
    const incoming = await readOrTell('command', readCommand, body, ack);
    if (incoming === undefined) return;
    const { command, request } = incoming;
    const work = workFor(handlers.commands, command, request, faults.unknownCommand(command));
    await serve.gesture('command', incoming, work, () => ack());
  });
  app.action(/.*/, async ({ body, ack }) => {
    const incoming = await readOrTell('action', readAction, body, ack);
    if (incoming === undefined) return;
    const name = incoming.request.actionId.split(':')[0] ?? '';
    const work = workFor(handlers.actions, name, incoming.request, faults.unknownControl);
    await serve.gesture(`action ${name}`, incoming, work, () => ack());
  });
  app.view<ViewSubmitAction>(/.*/, async ({ body, ack }) => {
    const incoming = await readOrTell('view', readView, body, ack);
    if (incoming === undefined) return;
    const name = incoming.request.callbackId;
    const work = workFor(handlers.views, name, incoming.request, faults.unknownControl);
    await serve.gesture(`view ${name}`, incoming, work, async (viewAck) => {
      const response = responseOf(viewAck);
      await (response === undefined ? ack() : ack(response));
    });
  });
  app.shortcut(/.*/, async ({ body, ack }) => {
    const incoming = await readOrTell('shortcut', readShortcut, body, ack);
    if (incoming === undefined) return;
    const name = incoming.request.callbackId;
    const work = workFor(handlers.shortcuts, name, incoming.request, faults.unknownControl);
    await serve.gesture(`shortcut ${name}`, incoming, work, () => ack());
  });
  app.event(
    /^(?:message|app_mention|app_home_opened|app_uninstalled|tokens_revoked|subteam_members_changed|subteam_updated)$/,
    async ({ body }) => {
      const incoming = readEvent(body, await identity());
      if (incoming !== undefined) await decideEvent(incoming, body);
    },
  );
  const onLibraryError: Parameters<App['error']>[0] = async ({ error, body }) => {
    await serve.unreadable('payload', error, readAnyAsker(body));
  };
  app.error(onLibraryError);

  const rerunUnfinished = async (self: Identity): Promise<void> => {
    for (const { body, key } of await deliveries.listUnfinishedEvents()) {
      log.info('running an unfinished event', { deliveryKey: key });
      const kept: unknown = JSON.parse(body);
      const incoming = readEvent(kept, self);
      if (incoming !== undefined) await track(decideEvent(incoming, kept));
    }
  };

  const noteStudio = async ({ studioId, studioName }: Identity): Promise<void> => {
    await storage.inTransaction(async (stores) => {
      if ((await stores.care.findCare(studioId)).leftAt !== undefined)
        await stores.care.markLeft(studioId, undefined);
      const found = await stores.studios.find(studioId);
      if (found?.name === studioName) return;
      const createdAt = found?.createdAt ?? clock.now();
      await stores.studios.save({ id: studioId, name: studioName, createdAt });
    });
  };

  let isListening = false;
  let stopped: Promise<void> | undefined;

  const drain = async (): Promise<void> => {
    if (isListening) await app.stop();
    while (inFlight.size > 0) await Promise.allSettled([...inFlight]);
    await loop.stop();
    while (inFlight.size > 0) await Promise.allSettled([...inFlight]);
    await sender.stop();
  };

  return {
    app,
    identity,
    start: async (listen) => {
      const self = await identity();
      await noteStudio(self);
      await rerunUnfinished(self);
      const server: unknown = await (listen === undefined ? app.start() : app.start(listen));
      isListening = true;
      loop.start();
      const address = server instanceof Server ? server.address() : undefined;
      return typeof address === 'object' ? address?.port : undefined;
    },
    stop: () => {
      stopped ??= drain();
      return stopped;
    },
    tick: loop.tick,
    nextDueAt: loop.nextDueAt,
    settle: async () => {
      do {
        while (inFlight.size > 0) await Promise.allSettled([...inFlight]);
        await loop
          .tick()
          .catch((error: unknown) => log.error('due notices not looked at', errorFacts(error)));
        await sender.idle();
      } while (inFlight.size > 0);
    },
  };
}

async function askIdentity(client: WebClient): Promise<Identity> {
  const answer = await client.auth.test();
  const { team_id: studioId, team, user_id: botUserId, bot_id: botId, url } = answer;
  if (studioId === undefined || botUserId === undefined || botId === undefined)
    throw new Error('The workspace did not say who the app is; the token is no bot token.');
  const self = { studioId, studioName: team ?? studioId, botUserId, botId };
  return url === undefined ? self : { ...self, url };
}

function responseOf(ack: ViewAck | undefined): ViewResponseAction | undefined {
  switch (ack?.kind) {
    case 'errors':
      return { response_action: 'errors', errors: { ...ack.byBlock } };
    case 'update':
      return { response_action: 'update', view: ack.view };
    case 'close':
    case undefined:
      return undefined;
  }
}
