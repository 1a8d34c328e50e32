import { findClass } from '../../../bot/flows/classes-in-week.ts';
import { handlers } from '../../../bot/handlers.ts';
import {
  type ActionRequest,
  type Desk,
  type Message,
  type MessageRequest,
  noReaction,
  type Reaction,
  type ShortcutRequest,
  type ViewRequest,
} from '../../../bot/handling.ts';
import { commands } from '../../../bot/ids.ts';
import { createMakeDesk } from '../../../bot/make-desk.ts';
import { english } from '../../../bot/words/en.ts';
import { zonedMoment } from '../../../domain/calendar/wall-time.ts';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import type { Stores } from '../../../domain/ports.ts';
import { defaultSettings, type Settings } from '../../../domain/settings.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';
import { pushAndHinge } from '../conversation/classes.ts';

/** Five people of a studio: who sets it up, who reviews, who wrote and teaches, who teaches something else, who does neither. */
export const people = {
  admin: 'U0ADMIN',
  coach: 'U0COACH',
  owner: 'U0OWNER',
  other: 'U0OTHER',
  nobody: 'U0NOBODY',
} as const;
export type Role = keyof typeof people;
export const roles = Object.keys(people).flatMap((each) => (each in people ? [each as Role] : []));

export const ownStudio = 'T1';
/** Has the same people in the same roles, and none of the first one's plans and slots. */
export const otherStudio = 'T2';
/** Stands in all that the first studio's people typed. */
export const canary = 'Canary';
export const reviewChannel = 'C0REVIEW';
const teamChannel = 'C0TEAM';
/** A Wednesday. */
const now = '2026-11-04T09:00:00.000Z';
export const toldWeek = '2026-W44';
export const askedSaying = 'muscle:lats';

const slot = (id: string, weekday: 'Mon' | 'Thu' | 'Fri', instructorId: string) =>
  ({
    id,
    name: `${canary} ${id}`,
    weekday,
    time: '18:00',
    seconds: 1_800,
    room: 'Hall',
    instructorId,
  }) as const;

const shared: Settings = {
  ...defaultSettings,
  zone: 'UTC',
  headCoaches: [people.coach],
  admins: [people.admin],
  reviewChannel,
  teamChannel,
};

const studioSettings: Settings = {
  ...shared,
  rooms: [{ name: 'Hall', kit: { dumbbell: 20, mat: 20 }, doorSeconds: 0, clearUpSeconds: 0 }],
  slots: [
    slot('mon', 'Mon', people.owner),
    slot('thu', 'Thu', people.owner),
    slot('fri', 'Fri', people.other),
  ],
};

const classText = (title: string) => `${canary} ${title}, 20 min, level 2, 10 people
warm-up 5:00: march
circuit x3, 40/20
push-up
kettlebell swing
plank
cool-down to the end`;

/** What a person does, without who they are. */
export type Gesture =
  | ({ readonly kind: 'action'; readonly actionId: string; readonly value: string } & Pick<
      ActionRequest,
      'message' | 'view'
    >)
  | ({ readonly kind: 'view' } & Pick<ViewRequest, 'callbackId' | 'metadata' | 'values'>)
  | { readonly kind: 'command'; readonly text: string }
  | ({ readonly kind: 'message'; readonly text: string } & Pick<MessageRequest, 'place' | 'thread'>)
  | ({ readonly kind: 'shortcut' } & Pick<ShortcutRequest, 'callbackId'>)
  | { readonly kind: 'home' };

/** What came of a gesture. */
export type Outcome = {
  /** Rows of the two studios that are other than before, by table; what answers a message is none of them. */
  readonly changed: Readonly<Record<typeof ownStudio | typeof otherStudio, readonly string[]>>;
  /** What the person alone was told, in words; views are not among them. */
  readonly told: readonly string[];
  /** Whether a form, a view or their home was shown. */
  readonly shown: boolean;
  /** Everything that was answered, as it goes over the wire. */
  readonly wire: string;
};

const triggerId = '1.trigger';
type Rows = Readonly<Record<string, readonly unknown[]>>;

/** A studio in the middle of its week, on real storage; every gesture starts from the same state. */
export async function openStudioOfRoles() {
  const storage = await openTestStorage();
  storage.database.pragma('synchronous = OFF');
  let ids = 0;
  const clock = { instant: now };
  const makeDesk = createMakeDesk({
    clock: { now: () => clock.instant },
    newId: () => {
      ids += 1;
      return `id-${ids}`;
    },
    words: english,
    catalogue,
  });
  const at = <Result>(work: (desk: Desk) => Promise<Result>, studioId: string = ownStudio): Promise<Result> =>
    storage.inTransaction(async (stores) => work(await makeDesk(studioId, stores)));

  for (const [id, of] of [
    [ownStudio, studioSettings],
    [otherStudio, shared],
  ] as const) {
    await storage.studios.save({ id, name: id, createdAt: now });
    await storage.settings.save(id, of, 'f', now);
  }
  let stamps = 0;
  const newStamp = () => {
    stamps += 1;
    return `100.${String(stamps).padStart(6, '0')}`;
  };
  const say = async (personId: string, text: string, thread?: string): Promise<string> => {
    const stamp = newStamp();
    await at((desk) => handlers.message(messageOf(personId, { text, stamp, thread }), desk));
    return stamp;
  };
  /** Writes a class; comes back with its plan and thread. */
  const write = async (title: string, text = classText(title)) => {
    const thread = await say(people.owner, text);
    const [record] = await storage.plans.listByAuthor(ownStudio, people.owner, 1);
    if (record === undefined) throw new Error(`No plan: ${title}`);
    return { plan: record.id, thread };
  };

  const draft = await write('draft');
  const edited = await write('edited');
  await say(people.owner, 'drop C', edited.thread);
  const undone = await write('undone');
  for (const text of ['drop C', 'undo']) await say(people.owner, text, undone.thread);
  const waits = await write('waits');
  await say(people.owner, 'send', waits.thread);
  const wrong = await write('wrong', `${classText('wrong')}\nemom 6\nqwertz jump`);
  const late = await write('late', classText('late').replace('20 min', '40 min'));
  const clean = await write('clean', pushAndHinge.replace('Push & Hinge', `${canary} clean`));
  await say(people.owner, `title ${canary} clean again`, clean.thread);
  await say(people.owner, 'send', clean.thread);
  await say(people.owner, 'new move canary crawl like bear crawl');

  const comment = await at(async (desk) => {
    const version = await desk.stores.plans.findVersion(ownStudio, waits.plan, 1);
    const [block] = version?.plan?.blocks.filter((each) => 'letters' in each) ?? [];
    const line = block !== undefined && 'letters' in block ? (block.letters[0]?.moves[0]?.id ?? '') : '';
    const kept = { id: 'comment-1', planId: waits.plan, line, version: 1, text: canary, by: people.coach };
    await desk.stores.comments.add(ownStudio, { ...kept, at: now });
    return kept;
  });
  const problem = await at(async (desk) => {
    const text = (await desk.stores.plans.findVersion(ownStudio, wrong.plan, 1))?.text ?? '';
    const start = text.indexOf('qwertz jump');
    return [start, start + 'qwertz jump'.length] as const;
  });
  const findings = await at(async (desk) => desk.stores.plans.findVersion(ownStudio, late.plan, 1));
  await at(async ({ stores }) => {
    const cover = { id: 'thu:2026-11-05', slotId: 'thu', title: `${canary} cover`, room: 'Hall' };
    await stores.classes.save(ownStudio, {
      ...cover,
      startsAt: zonedMoment({ date: '2026-11-05', time: '18:00' }, 'UTC'),
      slotSeconds: 1_800,
      instructorId: people.owner,
      state: 'planned',
      coverOpen: true,
    });
    await stores.classes.save(ownStudio, {
      id: 'mon:2026-11-16',
      slotId: 'mon',
      startsAt: zonedMoment({ date: '2026-11-16', time: '18:00' }, 'UTC'),
      slotSeconds: 1_800,
      instructorId: people.owner,
      planId: edited.plan,
      state: 'planned',
    });
    for (const week of ['2026-W42', '2026-W43', toldWeek])
      await stores.weekReports.save(
        ownStudio,
        week,
        {
          trust: { classes: 3, withPlan: 3, assumed: 0, patternsOnly: 0, cancelled: 0, notTaught: 0 },
          said: [{ saying: askedSaying, amount: 1 }],
          exceptions: { ranOver: [], cutShort: [], cancelled: [], notTaught: [], covered: [] },
        },
        now,
      );
    for (const key of [`week:${toldWeek}`, `week:${toldWeek}:ask`])
      await stores.notices.enqueue(ownStudio, {
        key,
        to: teamChannel,
        action: { kind: 'post' },
        payload: { text: canary },
        causedAt: now,
      });
  });
  await sendAll(storage, newStamp);

  const threadOfReview = async (plan: string) =>
    (await storage.notices.find(ownStudio, `review:${plan}:1`))?.sentTo?.stamp ?? '';
  const world = {
    draft: draft.plan,
    draftThread: draft.thread,
    edited: edited.plan,
    editedThread: edited.thread,
    /** At its third version, the second taken back. */
    undone: undone.plan,
    waits: waits.plan,
    waitsThread: waits.thread,
    reviewThread: await threadOfReview(waits.plan),
    /** In review at its second version, nothing found in it. */
    clean: clean.plan,
    wrong: wrong.plan,
    problem,
    late: late.plan,
    finding: findings?.findingCodes.find((code) => code === 'time-unused') ?? '',
    findingCodes: findings?.findingCodes ?? [],
    comment: comment.id,
    line: comment.line,
    ownMove: 'canary-crawl',
    /** Ended and not marked yet, upcoming, offered to the team. */
    past: 'mon:2026-11-02',
    upcoming: 'mon:2026-11-09',
    offered: 'thu:2026-11-05',
    /** Has the plan `edited`. */
    planned: 'mon:2026-11-16',
    classes: await at(async (desk) => {
      const found = await Promise.all(
        ['mon:2026-11-02', 'mon:2026-11-09', 'thu:2026-11-05'].map((id) => findClass(desk, id)),
      );
      return found.flatMap((each) => each ?? []);
    }),
  };

  const standing = await storage.inTransaction(rowsOf);

  /** The gesture by this person in this studio; nothing of it stays. */
  const attempt = async (
    personId: string,
    gesture: Gesture,
    options: { readonly studioId?: string; readonly before?: (stores: Stores) => Promise<void> } = {},
  ): Promise<Outcome> => {
    const rolledBack = new Error('rolled back');
    let outcome: Outcome | undefined;
    const { studioId = ownStudio, before } = options;
    await storage
      .inTransaction(async (stores) => {
        await before?.(stores);
        const was = before === undefined ? standing : await rowsOf(stores);
        const reaction = await react(personId, gesture, await makeDesk(studioId, stores));
        const is = await rowsOf(stores);
        const replies = await repliesIn(stores, studioId);
        outcome = outcomeOf(reaction, replies, was, is);
        throw rolledBack;
      })
      .catch((error: unknown) => {
        if (error !== rolledBack) throw error;
      });
    if (outcome === undefined) throw new Error('The gesture came to no end.');
    return outcome;
  };

  return { world, attempt, close: () => storage.close() };
}

export type StudioOfRoles = Awaited<ReturnType<typeof openStudioOfRoles>>;
export type World = StudioOfRoles['world'];

const replyStamp = '900.000001';

function messageOf(
  personId: string,
  said: {
    readonly text: string;
    readonly stamp: string;
    readonly thread?: string | undefined;
    readonly place?: string;
  },
): MessageRequest {
  const place = said.place ?? `D${personId.slice(1)}`;
  return {
    kind: 'message',
    source: place.startsWith('D') ? 'direct message' : 'mention',
    personId,
    place,
    stamp: said.stamp,
    ...(said.thread === undefined ? {} : { thread: said.thread }),
    text: said.text,
    edited: false,
  };
}

function react(personId: string, gesture: Gesture, desk: Desk): Promise<Reaction> {
  switch (gesture.kind) {
    case 'action': {
      const handler = handlers.actions[gesture.actionId];
      return handler?.({ ...gesture, personId, triggerId }, desk) ?? never(gesture.actionId);
    }
    case 'view': {
      const handler = handlers.views[gesture.callbackId];
      return handler?.({ ...gesture, viewId: 'V1', personId, triggerId }, desk) ?? never(gesture.callbackId);
    }
    case 'command': {
      const handler = handlers.commands[commands.evenset];
      const request = { ...gesture, personId, place: teamChannel, triggerId };
      return handler?.(request, desk) ?? never(commands.evenset);
    }
    case 'shortcut': {
      const handler = handlers.shortcuts[gesture.callbackId];
      const message = { place: teamChannel, stamp: '1.1', text: classText('shortcut') };
      return handler?.({ ...gesture, personId, triggerId, message }, desk) ?? never(gesture.callbackId);
    }
    case 'message':
      return handlers.message(messageOf(personId, { ...gesture, stamp: replyStamp }), desk);
    case 'home':
      return handlers.home({ kind: 'home', personId }, desk);
  }
}

function never(name: string): never {
  throw new Error(`No handler goes by ${name}.`);
}

/** As the sender would: each post has its place and stamp. */
async function sendAll(
  storage: Awaited<ReturnType<typeof openTestStorage>>,
  newStamp: () => string,
): Promise<void> {
  for (const notice of await storage.notices.listUnfinished(ownStudio, 1_000)) {
    await storage.notices.markSending(ownStudio, notice.key, now);
    await storage.notices.markSent(ownStudio, notice.key, { place: notice.to, stamp: newStamp() }, now);
  }
}

async function rowsOf(stores: Stores): Promise<Readonly<Record<string, Rows>>> {
  return {
    [ownStudio]: await stores.care.exportStudio(ownStudio),
    [otherStudio]: await stores.care.exportStudio(otherStudio),
  };
}

const isReply = (row: unknown) =>
  typeof row === 'object' &&
  row !== null &&
  'notice_key' in row &&
  typeof row.notice_key === 'string' &&
  row.notice_key.startsWith('reply:');

async function repliesIn(stores: Stores, studioId: string): Promise<readonly Message['text'][]> {
  const unfinished = await stores.notices.listUnfinished(studioId, 1_000);
  return unfinished.flatMap(({ key, payload }) => (key.startsWith('reply:') ? [payload.text] : []));
}

function outcomeOf(
  reaction: Reaction,
  replies: readonly string[],
  was: Readonly<Record<string, Rows>>,
  is: Readonly<Record<string, Rows>>,
): Outcome {
  const tablesChanged = (studioId: string) =>
    Object.keys(is[studioId] ?? {}).filter((table) => {
      const plain = (rows: Rows | undefined) =>
        JSON.stringify((rows?.[table] ?? []).filter((row) => !isReply(row)));
      return plain(was[studioId]) !== plain(is[studioId]);
    });
  const { ack = { kind: 'none' } } = reaction;
  const alone = reaction.answers.flatMap((answer) =>
    answer.kind === 'only to you' ? [answer.message.text] : [],
  );
  const errors = ack.kind === 'errors' ? Object.values(ack.byBlock) : [];
  return {
    changed: { [ownStudio]: tablesChanged(ownStudio), [otherStudio]: tablesChanged(otherStudio) },
    told: [...alone, ...errors, ...replies],
    shown:
      ack.kind === 'update' ||
      ack.kind === 'close' ||
      reaction.answers.some(({ kind }) => kind !== 'only to you'),
    wire: JSON.stringify([reaction === noReaction ? [] : reaction, replies]),
  };
}
