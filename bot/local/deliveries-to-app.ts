import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { type AcceptedBlock, acceptModal } from './accepted-blocks.ts';
import type { AcceptedElement } from './accepted-elements.ts';
import { answerInPlace } from './answer-in-place.ts';
import {
  elementsOf,
  type FieldValue,
  type FormValues,
  filledShape,
  formProblems,
  stateOf,
} from './form-values.ts';
import { messageShape, placeName, viewShape } from './platform-shapes.ts';
import { type Outcome, outcomeWords, postSigned } from './post-signed.ts';
import type { Traffic } from './traffic.ts';
import type { Change, Message, OpenView, Place, Workspace } from './workspace.ts';

/** How a person's gesture ended, as the page tells it. */
export type GestureResult =
  | { readonly kind: 'done' }
  | { readonly kind: 'field-errors'; readonly errors: Readonly<Record<string, string>> }
  | { readonly kind: 'failed'; readonly message: string };

type Json = Readonly<Record<string, unknown>>;

export type Deliveries = ReturnType<typeof createDeliveries>;

/** The author of the workspace's own notices to one person. */
export const noticeAuthorId = 'UWORKSPACE';

type EventKind = 'message.im' | 'app_mention' | 'app_home_opened' | 'subteam_members_changed';
const scopeOfEvent: Readonly<Record<EventKind, string | undefined>> = {
  'message.im': 'im:history',
  app_mention: 'app_mentions:read',
  app_home_opened: undefined,
  subteam_members_changed: 'usergroups:read',
};
const commandsScope = 'commands';
const noCommands = `its manifest does not ask for the scope ${commandsScope}.`;
const done: GestureResult = { kind: 'done' };
const failed = (message: string): GestureResult => ({ kind: 'failed', message });

const viewResponse = z.discriminatedUnion('response_action', [
  z.looseObject({ response_action: z.literal('errors'), errors: z.record(z.string(), z.string()) }),
  z.looseObject({ response_action: z.literal('update'), view: z.unknown() }),
  z.looseObject({ response_action: z.literal('push'), view: z.unknown() }),
  z.looseObject({ response_action: z.literal('clear') }),
]);

const parseJson = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};

/** Signed deliveries to the app's one address: events with retries, and what people do with a time-out. */
export const createDeliveries = (wiring: {
  readonly workspace: Workspace;
  /** The app's address for events and interactions; undefined while there is none. */
  readonly appUrl: () => string | undefined;
  readonly signingSecret: string;
  readonly baseUrl: () => string;
  readonly traffic: Traffic;
  /** Pauses before the three repeats of an event that was not answered with 200. */
  readonly retryDelaysMs?: readonly number[];
}) => {
  const { workspace, traffic } = wiring;
  const { app, team } = workspace;
  const retryDelaysMs = wiring.retryDelaysMs ?? [50, 500, 2_000];
  const inFlight = new Set<Promise<unknown>>();
  let isStopped = false;

  const track = <T>(work: Promise<T>): Promise<T> => {
    inFlight.add(work);
    return work.finally(() => inFlight.delete(work));
  };

  const send = async (
    name: string,
    body: string,
    contentType: string,
    payload: unknown,
    headers: Readonly<Record<string, string>> = {},
  ): Promise<Outcome> => {
    const started = performance.now();
    const outcome = await postSigned(wiring.appUrl(), body, wiring.signingSecret, {
      'content-type': contentType,
      ...headers,
    });
    traffic.add({
      at: new Date().toISOString(),
      direction: 'to-app',
      name,
      outcome: outcome.kind === 'refused' ? `answered ${outcome.status}` : outcome.kind,
      isFine: outcome.kind === 'acknowledged',
      milliseconds: Math.round(performance.now() - started),
      sent: payload,
      answered: outcome.kind === 'acknowledged' ? (parseJson(outcome.body) ?? outcome.body) : undefined,
    });
    return outcome;
  };

  const interact = (name: string, payload: Json): Promise<Outcome> =>
    track(
      send(
        name,
        new URLSearchParams({ payload: JSON.stringify(payload) }).toString(),
        'application/x-www-form-urlencoded',
        payload,
      ),
    );

  const deliverEvent = async (event: Json): Promise<void> => {
    const payload = {
      token: 'local',
      team_id: team.id,
      api_app_id: app.id,
      event,
      type: 'event_callback',
      event_id: `Ev${randomUUID().replaceAll('-', '').slice(0, 12).toUpperCase()}`,
      event_time: Math.floor(Date.parse(workspace.now()) / 1000),
      authorizations: [
        {
          enterprise_id: null,
          team_id: team.id,
          user_id: app.botUserId,
          is_bot: true,
          is_enterprise_install: false,
        },
      ],
      is_ext_shared_channel: false,
    };
    const body = JSON.stringify(payload);
    const name = `event ${String(event.type)}`;
    let outcome = await send(name, body, 'application/json', payload);
    for (const [index, delay] of retryDelaysMs.entries()) {
      if (outcome.kind === 'acknowledged') return;
      const reason = outcome.kind === 'timed-out' ? 'http_timeout' : 'http_error';
      await new Promise((resolve) => setTimeout(resolve, delay));
      if (isStopped) return;
      outcome = await send(name, body, 'application/json', payload, {
        'x-slack-retry-num': String(index + 1),
        'x-slack-retry-reason': reason,
      });
    }
  };

  /** An event arrives only where the manifest subscribes to it and asks for its scope. */
  const emit = (subscription: EventKind, event: Json) => {
    const scope = scopeOfEvent[subscription];
    if (!app.events.includes(subscription) || (scope !== undefined && !app.scopes.includes(scope))) return;
    void track(deliverEvent(event));
  };

  const onGroupChanged = ({ before, after }: Extract<Change, { kind: 'group-changed' }>) => {
    const added = after.memberIds.filter((id) => !before.memberIds.includes(id));
    const removed = before.memberIds.filter((id) => !after.memberIds.includes(id));
    emit('subteam_members_changed', {
      type: 'subteam_members_changed',
      subteam_id: after.id,
      team_id: team.id,
      added_users: added,
      added_users_count: String(added.length),
      removed_users: removed,
      removed_users_count: String(removed.length),
      event_ts: workspace.nextTs(),
    });
  };

  const onChange = (change: Change) => {
    if (change.kind === 'other') return;
    if (change.kind === 'group-changed') return onGroupChanged(change);
    const message = change.kind === 'message-changed' ? change.after : change.message;
    const place = workspace.findPlace(message.placeId);
    if (place === undefined || message.onlyFor !== undefined) return;
    const shared = { channel: place.id, channel_type: place.kind === 'direct' ? 'im' : 'channel' };
    if (place.kind === 'channel') {
      if (change.kind === 'message-posted' && message.text.includes(`<@${app.botUserId}>`))
        emit('app_mention', {
          ...messageShape(message, workspace),
          type: 'app_mention',
          channel: place.id,
          event_ts: message.ts,
        });
      return;
    }
    switch (change.kind) {
      case 'message-posted':
        return emit('message.im', { ...messageShape(message, workspace), ...shared, event_ts: message.ts });
      case 'message-changed': {
        const ts = workspace.nextTs();
        return emit('message.im', {
          type: 'message',
          subtype: 'message_changed',
          hidden: true,
          ...shared,
          message: messageShape(change.after, workspace),
          previous_message: messageShape(change.before, workspace),
          ts,
          event_ts: ts,
        });
      }
      case 'message-deleted': {
        const ts = workspace.nextTs();
        return emit('message.im', {
          type: 'message',
          subtype: 'message_deleted',
          hidden: true,
          ...shared,
          deleted_ts: message.ts,
          previous_message: messageShape(message, workspace),
          ts,
          event_ts: ts,
        });
      }
    }
  };
  workspace.onChange(onChange);

  const userOf = (userId: string): Json => {
    const name = workspace.findPerson(userId)?.name ?? userId;
    return { id: userId, name: name.toLowerCase(), username: name.toLowerCase(), team_id: team.id };
  };
  const sharedByInteractions = (userId: string): Json => ({
    team: { id: team.id, domain: team.domain },
    user: userOf(userId),
    api_app_id: app.id,
    token: 'local',
    enterprise: null,
    is_enterprise_install: false,
    trigger_id: workspace.issueTrigger(userId),
  });
  const responseUrl = (grant: { userId: string; placeId: string; messageTs?: string }) =>
    `${wiring.baseUrl()}/response/${workspace.issueResponse(grant)}`;

  const tellAlone = (userId: string, place: Place, text: string) =>
    workspace.post({ placeId: place.id, authorId: noticeAuthorId, onlyFor: userId, text });

  const runCommand = async (gesture: {
    readonly userId: string;
    readonly place: Place;
    readonly command: string;
    readonly text: string;
  }): Promise<GestureResult> => {
    const { userId, place, command, text } = gesture;
    if (!app.scopes.includes(commandsScope)) return failed(`${app.name} may take no commands: ${noCommands}`);
    if (!app.commands.some((each) => each.command === command)) {
      const known = app.commands.map((each) => each.command).join(', ');
      return failed(
        `${command} is no command here. There ${app.commands.length === 1 ? 'is' : 'are'}: ${known}`,
      );
    }
    const fields = {
      token: 'local',
      team_id: team.id,
      team_domain: team.domain,
      channel_id: place.id,
      channel_name: placeName(place),
      user_id: userId,
      user_name: (workspace.findPerson(userId)?.name ?? userId).toLowerCase(),
      command,
      text,
      api_app_id: app.id,
      is_enterprise_install: 'false',
      response_url: responseUrl({ userId, placeId: place.id }),
      trigger_id: workspace.issueTrigger(userId),
    };
    const outcome = await track(
      send(
        `command ${command}`,
        new URLSearchParams(fields).toString(),
        'application/x-www-form-urlencoded',
        fields,
      ),
    );
    if (outcome.kind !== 'acknowledged') {
      tellAlone(userId, place, outcomeWords(outcome, command, app.name));
      return done;
    }
    if (outcome.body === '') return done;
    const parsed = parseJson(outcome.body);
    const answer = answerInPlace(
      { userId, placeId: place.id },
      typeof parsed === 'object' ? parsed : { text: outcome.body },
      workspace,
    );
    if (!answer.ok)
      tellAlone(userId, place, `${command} answered with something that can't be shown (${answer.error}).`);
    return done;
  };

  const actionOf = (
    blocks: readonly AcceptedBlock[],
    blockId: string,
    actionId: string,
    value: FieldValue | undefined,
  ): Json | undefined => {
    const block = blocks.find((each) => each.block_id === blockId);
    const element = (block === undefined ? [] : elementsOf(block)).find(
      (each) => 'action_id' in each && each.action_id === actionId,
    );
    if (element === undefined || element.type === 'image') return undefined;
    const shape = actionShape(element, value);
    return shape === undefined
      ? undefined
      : {
          ...shape,
          type: element.type,
          action_id: actionId,
          block_id: blockId,
          action_ts: (Date.now() / 1000).toFixed(6),
        };
  };

  const act = async (
    what: string,
    blocks: readonly AcceptedBlock[],
    gesture: ActGesture,
    container: Json,
  ): Promise<GestureResult> => {
    const action = actionOf(blocks, gesture.blockId, gesture.actionId, gesture.value);
    if (action === undefined) return failed(`${what} is gone. Look at the newest message and try there.`);
    const outcome = await interact(`action ${gesture.actionId}`, {
      type: 'block_actions',
      ...sharedByInteractions(gesture.userId),
      ...container,
      actions: [action],
    });
    return outcome.kind === 'acknowledged' ? done : failed(outcomeWords(outcome, what, app.name));
  };

  return {
    deliverEvent: (event: Json) => track(deliverEvent(event)),
    runCommand,

    actOnMessage: (message: Message, gesture: ActGesture): Promise<GestureResult> => {
      const place = workspace.findPlace(message.placeId);
      if (place === undefined) return Promise.resolve(failed('This place is gone.'));
      const isEphemeral = message.onlyFor !== undefined;
      const { ts, threadTs } = message;
      const thread = threadTs === undefined ? {} : { thread_ts: threadTs };
      return act('This button', message.blocks ?? [], gesture, {
        container: {
          type: 'message',
          message_ts: ts,
          channel_id: place.id,
          is_ephemeral: isEphemeral,
          ...thread,
        },
        channel: { id: place.id, name: placeName(place) },
        ...(isEphemeral ? {} : { message: messageShape(message, workspace) }),
        state: { values: stateOf(message.blocks ?? [], gesture.values) },
        response_url: responseUrl({ userId: gesture.userId, placeId: place.id, messageTs: ts }),
      });
    },

    actOnView: (view: OpenView, gesture: ActGesture): Promise<GestureResult> =>
      act('This button', view.content.blocks, gesture, {
        container: { type: 'view', view_id: view.id },
        view: viewShape(view, workspace, stateOf(view.content.blocks, gesture.values)),
      }),

    submitView: async (view: OpenView, values: FormValues): Promise<GestureResult> => {
      const problems = formProblems(view.content.blocks, values);
      if (Object.keys(problems).length > 0) return { kind: 'field-errors', errors: problems };
      const outcome = await interact(`submit ${view.content.callback_id}`, {
        type: 'view_submission',
        ...sharedByInteractions(view.userId),
        view: viewShape(view, workspace, stateOf(view.content.blocks, values)),
        response_urls: [],
      });
      if (outcome.kind !== 'acknowledged') return failed(outcomeWords(outcome, 'Sending', app.name));
      return answerSubmission(view, outcome.body, workspace);
    },

    closeView: async (view: OpenView): Promise<GestureResult> => {
      const { content } = view;
      const clears = content.type === 'modal' && content.clear_on_close;
      if (clears) workspace.closeAllModals(view.userId);
      else workspace.closeTopModal(view.userId);
      if (content.type === 'modal' && content.notify_on_close)
        await interact(`close ${content.callback_id}`, {
          type: 'view_closed',
          ...sharedByInteractions(view.userId),
          view: viewShape(view, workspace),
          is_cleared: clears,
        });
      return done;
    },

    runMessageShortcut: async (
      message: Message,
      userId: string,
      callbackId: string,
    ): Promise<GestureResult> => {
      const place = workspace.findPlace(message.placeId);
      const shortcut = app.shortcuts.find((each) => each.callbackId === callbackId);
      if (place === undefined || shortcut === undefined) return failed('This shortcut is not here.');
      if (!app.scopes.includes(commandsScope))
        return failed(`${app.name} may take no shortcuts: ${noCommands}`);
      const outcome = await interact(`shortcut ${callbackId}`, {
        type: 'message_action',
        callback_id: callbackId,
        ...sharedByInteractions(userId),
        action_ts: (Date.now() / 1000).toFixed(6),
        channel: { id: place.id, name: placeName(place) },
        message_ts: message.ts,
        message: messageShape(message, workspace),
        response_url: responseUrl({ userId, placeId: place.id, messageTs: message.ts }),
      });
      return outcome.kind === 'acknowledged' ? done : failed(outcomeWords(outcome, shortcut.name, app.name));
    },

    openApp: (userId: string, placeId: string, tab: 'home' | 'messages') => {
      const home = workspace.homeOf(userId);
      emit('app_home_opened', {
        type: 'app_home_opened',
        user: userId,
        channel: placeId,
        tab,
        event_ts: workspace.nextTs(),
        ...(home === undefined || tab !== 'home' ? {} : { view: viewShape(home, workspace) }),
      });
    },

    /** Ends the repeats of events; what is on its way still arrives. */
    stop: () => {
      isStopped = true;
    },

    /** Resolves when nothing is on its way to the app. */
    idle: async (): Promise<void> => {
      while (inFlight.size > 0) await Promise.allSettled([...inFlight]);
    },
  };
};

export type ActGesture = {
  readonly userId: string;
  readonly blockId: string;
  readonly actionId: string;
  /** What the element holds after the gesture; a button has none. */
  readonly value: FieldValue | undefined;
  /** What the other elements around it hold. */
  readonly values: FormValues;
};

const actionShape = (element: AcceptedElement, value: FieldValue | undefined): Json | undefined => {
  if (element.type === 'button')
    return { text: element.text, ...(element.value === undefined ? {} : { value: element.value }) };
  if (element.type === 'overflow') {
    const option = element.options.find((each) => each.value === value);
    return option === undefined ? undefined : { selected_option: option };
  }
  return value === undefined ? undefined : filledShape(element, value);
};

const answerSubmission = (view: OpenView, body: string, workspace: Workspace): GestureResult => {
  if (body === '') {
    workspace.closeTopModal(view.userId);
    return done;
  }
  const parsed = viewResponse.safeParse(parseJson(body));
  const trouble = failed(`${workspace.app.name} answered with something that can't be shown. Try again.`);
  if (!parsed.success) return trouble;
  const answer = parsed.data;
  switch (answer.response_action) {
    case 'errors': {
      const ids = new Set(
        view.content.blocks.flatMap((each) => (each.type === 'input' ? [each.block_id] : [])),
      );
      const known = Object.keys(answer.errors).every((id) => ids.has(id));
      return known && ids.size > 0 ? { kind: 'field-errors', errors: answer.errors } : trouble;
    }
    case 'clear':
      workspace.closeAllModals(view.userId);
      return done;
    case 'update':
    case 'push': {
      const accepted = acceptModal(answer.view);
      if (accepted.kind === 'refused') return trouble;
      if (answer.response_action === 'update') workspace.changeView(view, accepted.value);
      else if (workspace.pushModal(view.userId, accepted.value) === undefined) return trouble;
      return done;
    }
  }
};
