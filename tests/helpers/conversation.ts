import nock from 'nock';
import type { AppParts } from '../../bot/build-app.ts';
import { handlers } from '../../bot/handlers.ts';
import { acceptMessageBlocks, acceptModal, textLengthOf } from '../../bot/local/accepted-blocks.ts';
import { defaultSettings, type Settings } from '../../domain/settings.ts';
import { createFakeWorkspace } from './fake-workspace.ts';
import { openTestStorage } from './open-test-storage.ts';
import { actionPayload, commandPayload, eventPayload, messagePayload, viewPayload } from './payloads.ts';
import { createTestApp } from './test-app.ts';
import { unshownKinds } from './unshown-kinds.ts';

/** Ana and Ben teach, Cleo and Dora are head coaches. A direct message to `U1` is the place `D1`. */
export const people = { ana: 'U1', ben: 'U2', cleo: 'U8', dora: 'U9' } as const;
export const reviewChannel = 'C7';
const studioId = 'T1';

const studioSettings: Settings = {
  ...defaultSettings,
  zone: 'UTC',
  headCoaches: [people.cleo, people.dora],
  reviewChannel,
  teamChannel: 'C1',
};

type Option = { readonly text: { readonly text: string }; readonly value: string };
type Element = {
  readonly type: string;
  readonly action_id?: string;
  readonly value?: string;
  readonly initial_value?: string;
  readonly text?: { readonly text: string };
  readonly options?: readonly Option[];
  readonly option_groups?: readonly { readonly options: readonly Option[] }[];
};
type SentBlock = {
  readonly type: string;
  readonly block_id?: string;
  readonly text?: { readonly text: string };
  readonly elements?: readonly Element[];
  readonly accessory?: Element;
  readonly element?: Element;
};
/** A message or view as it went over the wire. */
export type Sent = { readonly text: string; readonly blocks: readonly SentBlock[] };
export type Standing = Sent & {
  readonly channel: string;
  readonly ts: string;
  readonly thread?: string;
  readonly key?: string;
};
type OpenView = {
  readonly callback_id: string;
  readonly private_metadata: string;
  readonly blocks: readonly SentBlock[];
};

/** The whole app with real SQLite and a workspace in memory; nothing falls due by the clock. */
export async function openConversation(
  changes: Partial<Settings> = {},
  parts: Pick<Partial<AppParts>, 'words' | 'due'> = {},
) {
  nock.disableNetConnect();
  const storage = await openTestStorage();
  const workspace = createFakeWorkspace();
  const app = createTestApp({ storage, handlers, ...parts });
  await storage.studios.save({ id: studioId, name: 'Morgen', createdAt: '2026-11-01T09:00:00.000Z' });
  await storage.settings.save(studioId, { ...studioSettings, ...changes }, 'f', '2026-11-01T09:00:00.000Z');
  await app.start();
  let stamps = 0;
  const newStamp = () => {
    stamps += 1;
    return `100.${String(stamps).padStart(6, '0')}`;
  };
  const deliver = async (payload: Record<string, unknown>) => {
    const { acks, failed } = await app.send(payload);
    await app.settle();
    if (failed !== undefined) throw failed;
    return acks;
  };
  const by = (personId: string) => ({ user: { id: personId, team_id: studioId } });
  const posts = (): readonly Standing[] =>
    workspace.posts.map(({ blocks, ...post }) => ({ ...post, blocks: blocksOf(blocks) }));
  const view = (): OpenView => {
    const call = workspace.calls.findLast(
      ({ method }) => method === 'views.open' || method === 'views.update',
    );
    return { callback_id: '', private_metadata: '', blocks: [], ...JSON.parse(call?.args.view ?? '{}') };
  };

  return {
    storage,
    workspace,
    clock: app.clock,
    settle: app.settle,
    lines: app.lines,
    posts,
    view,
    deliver,
    /** In a direct message; answers with the stamp, which opens the draft's thread. */
    say: async (personId: string, text: string, at: { thread?: string; stamp?: string } = {}) => {
      const ts = at.stamp ?? newStamp();
      const inThread = at.thread === undefined ? {} : { thread_ts: at.thread };
      await deliver(messagePayload(text, { ts, user: personId, channel: directOf(personId), ...inThread }));
      return ts;
    },
    /** An earlier direct message put right. */
    editMessage: async (personId: string, stamp: string, text: string) => {
      const message = {
        type: 'message',
        user: personId,
        text,
        ts: stamp,
        edited: { user: personId, ts: newStamp() },
      };
      await deliver(
        eventPayload({
          type: 'message',
          subtype: 'message_changed',
          channel_type: 'im',
          channel: directOf(personId),
          message,
          previous_message: { text: '' },
        }),
      );
    },
    mention: async (personId: string, text: string, at: { channel: string; thread: string }) => {
      const event = { type: 'app_mention', user: personId, channel: at.channel, thread_ts: at.thread };
      await deliver(eventPayload({ ...event, text: `<@UBOT> ${text}`, ts: newStamp() }));
    },
    command: (personId: string, text: string) => deliver(commandPayload(text, { user_id: personId })),
    /** Taps the newest button of that label (or its start), where it really stands. */
    tap: async (personId: string, label: string, on?: Standing) => {
      const where = on ?? posts().findLast((post) => buttonOf(post, label) !== undefined);
      const found = where && buttonOf(where, label);
      if (where === undefined || found === undefined)
        throw new Error(`No button "${label}" stands anywhere.`);
      await deliver(
        actionPayload(found.action_id ?? '', found.value, {
          ...by(personId),
          channel: { id: where.channel },
          message: { ts: where.ts, thread_ts: where.thread },
          container: { type: 'message', message_ts: where.ts, channel_id: where.channel },
        }),
      );
    },
    /** A button of the modal that is open. */
    tapInView: async (personId: string, label: string) => {
      const found = buttonOf({ text: '', blocks: view().blocks }, label);
      if (found === undefined) throw new Error(`No button "${label}" in the open view.`);
      const { callback_id, private_metadata } = view();
      await deliver(
        actionPayload(found.action_id ?? '', found.value, {
          ...by(personId),
          channel: undefined,
          message: undefined,
          container: { type: 'view', view_id: 'V1' },
          view: { id: 'V1', callback_id, private_metadata, state: { values: {} } },
        }),
      );
    },
    /** Any value for any handler, as a forged or outdated client might send it. */
    act: (personId: string, actionId: string, value: string) =>
      deliver(actionPayload(actionId, value, by(personId))),
    /** Hands in the modal that is open, with texts and choices by block id. Answers with the ack. */
    submit: async (personId: string, values: Readonly<Record<string, string>>) => {
      const { callback_id, private_metadata, blocks } = view();
      const state = Object.fromEntries(
        Object.entries(values).map(([blockId, value]) => {
          const element = blocks.find(({ block_id }) => block_id === blockId)?.element;
          return [blockId, { [element?.action_id ?? blockId]: fieldState(element, value) }];
        }),
      );
      const [ack] = await deliver(
        viewPayload(callback_id, state, {
          ...by(personId),
          view: { id: 'V1', hash: 'h', callback_id, private_metadata, state: { values: state } },
        }),
      );
      return ack;
    },
    inThread: (thread: string) => posts().filter((post) => post.thread === thread),
    inChannel: (channel: string) => posts().filter((post) => post.channel === channel),
    /** What one person alone was told last. */
    toldLast: (): string => {
      const texts = [
        ...workspace.calls.flatMap(({ method, args }) =>
          method === 'chat.postEphemeral' ? [args.text ?? ''] : [],
        ),
        ...workspace.responses.map(({ body }) => body.text),
      ];
      return texts.at(-1) ?? '';
    },
    plansOf: (personId: string) => storage.plans.listByAuthor(studioId, personId, 50),
    planOf: async (personId: string) => {
      const [record] = await storage.plans.listByAuthor(studioId, personId, 1);
      if (record === undefined) throw new Error('No plan yet.');
      return record;
    },
    versionOf: async (personId: string) => {
      const [record] = await storage.plans.listByAuthor(studioId, personId, 1);
      const version = record && (await storage.plans.findVersion(studioId, record.id, record.currentVersion));
      if (version === undefined) throw new Error('No plan yet.');
      return version;
    },
    stepsOf: (planId: string) => storage.reviews.list(studioId, planId),
    close: async () => {
      await app.stop();
      await storage.close();
      nock.cleanAll();
      nock.enableNetConnect();
      return faultsIn(workspace.calls);
    },
  };
}

export type Conversation = Awaited<ReturnType<typeof openConversation>>;

/** All that is wrong with what was sent: past a limit of the platform, or of a kind the local page lacks. */
export function faultsIn(
  calls: readonly { readonly method: string; readonly args: Readonly<Record<string, string>> }[],
): readonly string[] {
  return calls.flatMap(({ method, args }) => {
    if (method.startsWith('chat.') && args.text !== undefined) {
      const blocks: unknown = JSON.parse(args.blocks ?? '[]');
      const accepted = acceptMessageBlocks(blocks);
      return [
        ...(args.text.length > 4_000 ? [`${method}: a text of ${args.text.length}`] : []),
        ...(args.text.trim() === '' ? [`${method}: no text`] : []),
        ...(accepted.kind === 'refused' ? accepted.messages : []),
        ...(textLengthOf(blocks) > 13_200
          ? [`${method}: blocks with ${textLengthOf(blocks)} characters`]
          : []),
        ...unshownKinds(blocks),
      ];
    }
    if (method === 'views.open' || method === 'views.update') {
      const view: unknown = JSON.parse(args.view ?? '{}');
      const accepted = acceptModal(view);
      const length = Buffer.byteLength(args.view ?? '');
      return [
        ...(length > 250_000 ? [`${method}: a view of ${length} bytes`] : []),
        ...(accepted.kind === 'refused' ? accepted.messages : []),
        ...unshownKinds(view),
      ];
    }
    return [];
  });
}

/** Everything a person can read in a message's blocks. */
export function shownText({ blocks }: Sent): string {
  return blocks
    .flatMap((block) => [block.text?.text ?? '', ...(block.elements ?? []).map(labelOf)])
    .filter((text) => text !== '')
    .join('\n');
}

export function buttonsOf({ blocks }: Sent): readonly string[] {
  return elementsOf(blocks).flatMap((element) => (element.type === 'button' ? [labelOf(element)] : []));
}

function buttonOf({ blocks }: Sent, label: string): Element | undefined {
  const all = elementsOf(blocks).filter(({ type }) => type === 'button');
  return all.find((each) => labelOf(each) === label) ?? all.find((each) => labelOf(each).startsWith(label));
}

function elementsOf(blocks: readonly SentBlock[]): readonly Element[] {
  return blocks.flatMap(({ elements = [], accessory }) => [
    ...elements,
    ...(accessory === undefined ? [] : [accessory]),
  ]);
}

function labelOf({ text }: Element): string {
  return typeof text === 'string' ? text : (text?.text ?? '');
}

function blocksOf(blocks: unknown): readonly SentBlock[] {
  return Array.isArray(blocks) ? blocks : [];
}

function directOf(personId: string): string {
  return `D${personId.slice(1)}`;
}

function fieldState(element: Element | undefined, value: string): Record<string, unknown> {
  if (element?.type === 'static_select' || element?.type === 'radio_buttons')
    return { type: element.type, selected_option: { value, text: { type: 'plain_text', text: value } } };
  if (element?.type === 'datepicker') return { type: 'datepicker', selected_date: value };
  if (element?.type === 'timepicker') return { type: 'timepicker', selected_time: value };
  return { type: element?.type ?? 'plain_text_input', value };
}
