import { type ChildProcess, spawn } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import SqliteDatabase from 'better-sqlite3';
import { build } from 'esbuild';
import fc from 'fast-check';
import { actions } from '../../../bot/ids.ts';
import { installLocalApp } from '../../../bot/local/local-app.ts';
import { startLocalWorkspace } from '../../../bot/local/local-server.ts';
import type { TrafficEntry } from '../../../bot/local/traffic.ts';
import { createWorkspace, directPlaceId, type Message } from '../../../bot/local/workspace.ts';
import { buildManifest } from '../../../manifest/manifest.ts';
import { openStorage } from '../../../storage/open-storage.ts';

const root = new URL('../../../', import.meta.url).pathname;
const botToken = 'xoxb-kill';
const signingSecret = 'kill-signing-secret';
const botUserId = 'U0BOT';
const studioId = 'T0KILL';
const coachId = 'U0COACH';
const teamChannel = 'C0TEAM';
const reviewChannel = 'C0REVIEW';
const instructors = ['U0ANA', 'U0BEA', 'U0CLEO', 'U0DINA', 'U0EVA'] as const;

type Twin = 'marks after the post' | 'marks before the post' | 'acks before the write';

/** When the process is killed: some time after its start, as its nth post arrives, or at a passage of its own. */
export type Kill =
  | { readonly kind: 'moment'; readonly ms: number }
  | { readonly kind: 'post arrived'; readonly nth: number }
  | {
      readonly kind: 'point';
      readonly point: 'before commit' | 'after commit' | 'marked sending' | 'marked sent';
      readonly nth: number;
    };

const anyKill: fc.Arbitrary<Kill> = fc.oneof(
  fc.record({ kind: fc.constant('moment' as const), ms: fc.integer({ min: 0, max: 500 }) }),
  fc.record({ kind: fc.constant('post arrived' as const), nth: fc.integer({ min: 1, max: 6 }) }),
  fc.record({
    kind: fc.constant('point' as const),
    point: fc.constantFrom(
      'before commit' as const,
      'after commit' as const,
      'marked sending' as const,
      'marked sent' as const,
    ),
    nth: fc.integer({ min: 1, max: 8 }),
  }),
);

export function seededKills(count: number, seed: number): readonly Kill[] {
  return fc.sample(anyKill, { numRuns: count, seed });
}

export type Tally = {
  readonly kills: number;
  readonly acknowledged: number;
  readonly posts: number;
  readonly approved: number;
  readonly countdowns: number;
  /** Messages put right after their draft stood, and forms handed in, as far as they were acknowledged. */
  readonly messageEdits: number;
  readonly forms: number;
  /** Acknowledged deliveries that the database does not know after a kill, or whose change is not there. */
  readonly lost: readonly string[];
  /** Posts that were due and are not in the workspace. */
  readonly missing: readonly string[];
  /** Keys that the workspace shows more than once. */
  readonly duplicates: readonly string[];
  /** What SQLite found wrong after a kill. */
  readonly unsound: readonly string[];
};

type Life = {
  readonly text: string;
  /** Of the message the class was written in; absent where a command was used. */
  stamp?: string;
  /** A command or form without an acknowledgement: the person can't know whether a draft came of it. */
  isDoubtful?: boolean;
  planId?: string;
  /** Its own message was put right, and answered. */
  isPutRight?: true;
  approved?: true;
};

/** How a class is written. */
type Way = 'message' | 'command' | 'form';
const ways: readonly Way[] = ['command', 'message', 'message', 'form', 'message', 'message'];

const edit = 'rounds A x2';
/** The move that the edit of a message puts in the place of another. */
const putRight = 'side plank';

/**
 * Instructors write classes by message, command and form, edit them in the thread and in the message itself, and
 * send them; the coach approves them, while the app is killed again and
 * again; then it runs undisturbed, and what the workspace shows is compared with what was acknowledged.
 */
export async function runUnderKills(options: {
  readonly kills: readonly Kill[];
  readonly twin?: Twin;
}): Promise<Tally> {
  const folder = mkdtempSync(join(tmpdir(), 'evenset-kill-'));
  const file = join(folder, 'evenset.sqlite');
  const entry = await bundle();
  await seedStudio(file);
  const settingsFile = join(folder, 'settings.json');
  writeFileSync(
    settingsFile,
    JSON.stringify({
      zone: 'UTC',
      teamChannel,
      reviewChannel,
      headCoaches: [coachId],
      countdownMinutes: [60],
    }),
  );
  const { server, port } = await startWorkspace(folder);
  const { workspace, deliveries, traffic } = server;
  const botPosts = () =>
    workspace
      .placesOf(botUserId)
      .flatMap(({ id }) => workspace.listMessages(id))
      .filter(({ authorId, onlyFor }) => authorId === botUserId && onlyFor === undefined);

  let child: ChildProcess | undefined;
  let arrived = 0;
  let killAtPost: number | undefined;
  workspace.onChange((change) => {
    if (change.kind !== 'message-posted' || change.message.authorId !== botUserId) return;
    arrived += 1;
    if (arrived === killAtPost) child?.kill('SIGKILL');
  });

  const startApp = async (kill?: Kill): Promise<void> => {
    const point = kill?.kind === 'point' ? [kill.point, String(kill.nth)] : ['none', '0'];
    arrived = 0;
    killAtPost = kill?.kind === 'post arrived' ? kill.nth : undefined;
    const started = spawn(process.execPath, [entry, file, ...point, options.twin ?? ''], {
      env: {
        PATH: process.env.PATH ?? '',
        SLACK_API_URL: server.apiUrl,
        SLACK_BOT_TOKEN: botToken,
        SLACK_SIGNING_SECRET: signingSecret,
        PORT: String(port),
        EVENSET_SETTINGS: settingsFile,
      },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    child = started;
    await new Promise<void>((resolve, reject) => {
      let said = '';
      started.stderr.on('data', (chunk) => {
        said += String(chunk);
      });
      started.stdout.once('data', () => resolve());
      // A kill during the start is a kill like any other.
      started.once('close', (_code, signal) => (signal === 'SIGKILL' ? resolve() : reject(new Error(said))));
    });
  };

  const hasEnded = () => child === undefined || child.exitCode !== null || child.signalCode !== null;
  const end = async (signal: NodeJS.Signals): Promise<void> => {
    const ending = child;
    if (ending === undefined || hasEnded()) return;
    const ended = new Promise((resolve) => ending.once('close', resolve));
    ending.kill(signal);
    await ended;
  };

  const acknowledged = new Set<string>();
  let lastSeen = 0;
  const noteAcknowledged = () => {
    for (const entry of traffic.list().filter(({ id }) => id > lastSeen)) {
      lastSeen = entry.id;
      const key = acknowledgedKey(entry);
      if (key !== undefined) acknowledged.add(key);
    }
  };

  const lost = new Set<string>();
  const unsound: string[] = [];
  const inspect = () => {
    noteAcknowledged();
    const seen = inspectCopy(file, join(folder, 'copy'));
    unsound.push(...seen.unsound);
    for (const key of acknowledged) if (!seen.keys.has(key)) lost.add(key);
  };

  const lives: Life[] = [];
  let forms = 0;
  let isClosing = false;
  let isOver = false;
  const until = async <Found>(look: () => Found | undefined, everyMs = 15): Promise<Found | undefined> => {
    while (!isOver) {
      const found = look();
      if (found !== undefined) return found;
      await wait(everyMs);
    }
    return undefined;
  };
  const clickUntilDone = async (
    userId: string,
    actionId: string,
    messageNow: () => Message | undefined,
  ): Promise<boolean> => {
    const clicked = await until(() => {
      const message = messageNow();
      return message !== undefined && blockWith(message, actionId) !== undefined ? message : undefined;
    });
    if (clicked === undefined) return false;
    while (!isOver) {
      const message = messageNow();
      const blockId = message === undefined ? undefined : blockWith(message, actionId);
      if (message === undefined || blockId === undefined) return true;
      await deliveries.actOnMessage(message, { userId, blockId, actionId, value: undefined, values: {} });
      await wait(60);
    }
    return false;
  };

  /** Asks for the form until it opens, which changes nothing, and hands it in once. */
  const handInForm = async (userId: string, text: string, open: () => Promise<unknown>): Promise<boolean> => {
    const form = await until(() => {
      const standing = workspace.modalsOf(userId).at(-1);
      if (standing === undefined) void open();
      return standing;
    }, 400);
    if (form === undefined) return false;
    const result = await deliveries.submitView(form, { class: { class: text } });
    workspace.closeAllModals(userId);
    if (result.kind === 'done') forms += 1;
    return result.kind === 'done';
  };

  const live = async (authorId: string, way: Way): Promise<void> => {
    const place = directPlaceId(authorId);
    const text = classText(lives.length);
    const found = (key: string) => (message: Message) => keyOf(message)?.startsWith(key) === true;
    const life: Life = { text };
    lives.push(life);
    const number = lives.length;
    if (way !== 'message') {
      const directly = workspace.findPlace(place);
      if (directly === undefined) throw new Error('A person has a direct place.');
      const command = (typed: string) =>
        deliveries.runCommand({ userId: authorId, place: directly, command: '/evenset', text: typed });
      if (way === 'form') {
        life.isDoubtful = !(await handInForm(authorId, text, () => command('')));
        return;
      }
      await command(text);
      life.isDoubtful = !traffic.list().some((entry) => isAcknowledgedCommand(entry, text));
      return;
    }
    const message = workspace.post({ placeId: place, authorId, text });
    life.stamp = message.ts;
    const inThread = () => workspace.listMessages(place).filter(({ threadTs }) => threadTs === life.stamp);
    const card = await until(() => inThread().find(found('card:')));
    if (card === undefined) return;
    life.planId = keyOf(card)?.slice('card:'.length) ?? '';
    workspace.post({ placeId: place, authorId, text: edit, threadTs: life.stamp ?? '' });
    await until(() => inThread().find(found(`answer:${life.planId}:v2`)));
    if (number % 2 === 0) {
      workspace.changeMessage(message, { text: text.replace('plank', putRight), isEdit: true });
      if ((await until(() => inThread().find(found(`answer:${life.planId}:v3`)))) !== undefined)
        life.isPutRight = true;
    }
    if (isClosing && number % 4 === 0) return;
    await clickUntilDone(authorId, actions.sendForReview, () => inThread().find(found('card:')));
    const reviewed = () => workspace.listMessages(reviewChannel).find(found(`review:${life.planId}:`));
    if (await clickUntilDone(coachId, actions.approve, reviewed)) life.approved = true;
  };

  const people = instructors.map(async (authorId) => {
    while (!isClosing) {
      await live(authorId, ways[(lives.length + 1) % ways.length] ?? 'message');
      await wait(40);
    }
  });

  try {
    for (const kill of options.kills) {
      await startApp(kill);
      if (kill.kind === 'moment') await wait(kill.ms);
      else for (let ms = 0; ms < 1_500 && !hasEnded(); ms += 10) await wait(10);
      await end('SIGKILL');
      inspect();
    }
    isClosing = true;
    await startApp();
    // One form for certain, by someone who hands in no other.
    const everybody = Promise.all([...people, live(coachId, 'form')]);
    await Promise.race([everybody, wait(options.twin === undefined ? 60_000 : 4_000)]);
    isOver = true;
    await everybody;
    await Promise.race([deliveries.idle(), wait(20_000)]);
    await untilQuiet(file);
    await end('SIGTERM');
    inspect();
    const posts = botPosts();
    const missing = missingPosts(file, posts, lives);
    return {
      kills: options.kills.length,
      acknowledged: acknowledged.size,
      posts: posts.length,
      approved: lives.filter(({ approved }) => approved).length,
      messageEdits: lives.filter(({ isPutRight }) => isPutRight).length,
      forms,
      countdowns: posts.filter((post) => keyOf(post)?.startsWith('countdown:')).length,
      lost: [...lost, ...lostChanges(file, lives)],
      missing,
      duplicates: repeated(posts.map((post) => keyOf(post) ?? '')),
      unsound,
    };
  } finally {
    isClosing = true;
    isOver = true;
    await end('SIGKILL');
    await server.stop();
    rmSync(folder, { recursive: true });
    rmSync(dirname(entry), { recursive: true });
  }
}

/** One file with the app in it: a start takes a third of the time of one from sources. */
async function bundle(): Promise<string> {
  const cache = join(root, 'node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  const outfile = join(mkdtempSync(join(cache, 'evenset-kill-')), 'app.js');
  await build({
    absWorkingDir: root,
    entryPoints: [new URL('./killable-app.ts', import.meta.url).pathname],
    bundle: true,
    format: 'esm',
    platform: 'node',
    packages: 'external',
    logLevel: 'warning',
    outfile,
  });
  return outfile;
}

/** Met three hours ago, so that a countdown due since then is still made good. */
async function seedStudio(file: string): Promise<void> {
  const storage = openStorage({ file });
  const createdAt = new Date(Date.now() - 3 * 3_600_000).toISOString();
  await storage.studios.save({ id: studioId, name: 'Morgen', createdAt });
  await storage.close();
}

async function startWorkspace(folder: string) {
  const manifest = buildManifest({ kind: 'http', requestUrl: 'http://127.0.0.1/slack/events' });
  const app = installLocalApp(manifest, { id: 'A0KILL', botUserId, botId: 'B0BOT', botToken });
  const everyone = [...instructors, coachId, botUserId];
  const open = (port: number) =>
    startLocalWorkspace({
      port: 0,
      workspace: createWorkspace({
        team: { id: studioId, name: 'Morgen', domain: 'morgen' },
        people: [...instructors, coachId].map((id) => ({
          id,
          name: id.slice(2),
          role: id === coachId ? 'head coach' : 'instructor',
          timeZone: 'UTC',
        })),
        channels: [
          { id: teamChannel, name: 'team', purpose: '', memberIds: everyone, isPrivate: false },
          { id: reviewChannel, name: 'review', purpose: '', memberIds: everyone, isPrivate: false },
        ],
        app,
        now: () => new Date().toISOString(),
      }),
      signingSecret,
      timeZone: 'UTC',
      pageFolder: folder,
      app: { url: `http://127.0.0.1:${port}/slack/events` },
      // Long enough to outlive every restart: each event is acknowledged in the end.
      retryDelaysMs: Array.from({ length: 10_000 }, () => 120),
    });
  const probe = await open(1);
  const port = Number(new URL(probe.url).port);
  await probe.stop();
  return { server: await open(port), port };
}

/** Within the hour, each at a start of its own: its countdown is due at once. */
function classText(number: number): string {
  const startsAt = new Date(Date.now() + (22 + (number % 36)) * 60_000);
  const day = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'][startsAt.getUTCDay()];
  const time = startsAt.toISOString().slice(11, 16);
  return `Class ${number} end, 20 min, level 2, 10 people, ${day} ${time}\nwarm-up 5:00: march\ncircuit x3, 40/20\npush-up\nplank\ncool-down to the end`;
}

/** The key under which the app knows a delivery that it acknowledged. */
function acknowledgedKey({ direction, outcome, sent }: TrafficEntry): string | undefined {
  if (direction !== 'to-app' || outcome !== 'acknowledged' || typeof sent !== 'object' || sent === null)
    return undefined;
  if ('event' in sent && 'event_id' in sent) {
    const { event } = sent;
    const isOwn = JSON.stringify(event).includes('"bot_id"');
    return isOwn ? undefined : `event:${String(sent.event_id)}`;
  }
  if (!('trigger_id' in sent)) return undefined;
  const kind = 'command' in sent ? 'command' : 'actions' in sent ? 'action' : 'view';
  return `${kind}:${String(sent.trigger_id)}`;
}

function isAcknowledgedCommand({ sent, outcome }: TrafficEntry, text: string): boolean {
  const isOfText = typeof sent === 'object' && sent !== null && 'text' in sent && sent.text === text;
  return isOfText && outcome === 'acknowledged';
}

/** Looks at a copy, so that the next start finds the files as the kill left them. */
function inspectCopy(file: string, copy: string) {
  for (const side of ['', '-wal', '-shm']) {
    rmSync(`${copy}${side}`, { force: true });
    if (side !== '-shm' && existsSync(`${file}${side}`)) copyFileSync(`${file}${side}`, `${copy}${side}`);
  }
  const database = new SqliteDatabase(copy);
  const integrity = String(database.pragma('integrity_check', { simple: true }));
  const loose = database.prepare('SELECT "table" FROM pragma_foreign_key_check').pluck().all().map(String);
  const keys = new Set(database.prepare('SELECT delivery_key FROM deliveries').pluck().all().map(String));
  database.close();
  return { unsound: [...(integrity === 'ok' ? [] : [integrity]), ...loose], keys };
}

/** Resolves when nothing is left to decide or to send, or after a long while. */
async function untilQuiet(file: string): Promise<void> {
  const database = new SqliteDatabase(file, { readonly: true });
  const open = database
    .prepare(
      'SELECT (SELECT count(*) FROM notices WHERE finished_at IS NULL) + (SELECT count(*) FROM deliveries WHERE done_at IS NULL)',
    )
    .pluck();
  let quiet = 0;
  for (let tries = 0; tries < 600 && quiet < 3; tries += 1) {
    quiet = open.get() === 0 ? quiet + 1 : 0;
    await wait(100);
  }
  database.close();
}

/** Posts the outbox counts as sent that are not where it says, and messages of people without their answer. */
function missingPosts(file: string, posts: readonly Message[], lives: readonly Life[]): readonly string[] {
  const database = new SqliteDatabase(file, { readonly: true });
  const sent = database
    .prepare(
      `SELECT notice_key AS key, sent_place AS place, sent_stamp AS stamp, state FROM notices WHERE action LIKE '{"kind":"post"%'`,
    )
    .all();
  database.close();
  const shown = new Map(posts.map((post) => [keyOf(post), `${post.placeId} ${post.ts}`]));
  const gone = sent.flatMap((row) => {
    if (typeof row !== 'object' || row === null || !('key' in row) || !('place' in row) || !('stamp' in row))
      throw new Error('A row has its columns.');
    return shown.get(String(row.key)) === `${String(row.place)} ${String(row.stamp)}`
      ? []
      : [`notice ${String(row.key)}`];
  });
  const inThread = (life: Life, prefix: string) =>
    posts.some((post) => post.threadTs === life.stamp && keyOf(post)?.startsWith(prefix));
  const unanswered = lives.flatMap((life) => [
    ...(life.stamp !== undefined && !inThread(life, 'card:') ? [`card of ${life.text.slice(0, 9)}`] : []),
    ...(life.planId !== undefined && !inThread(life, `answer:${life.planId}:v2`)
      ? [`answer of ${life.text.slice(0, 9)}`]
      : []),
    ...(life.planId !== undefined && !posts.some((post) => keyOf(post)?.startsWith('countdown:'))
      ? [`countdown of ${life.text.slice(0, 9)}`]
      : []),
  ]);
  return [...gone, ...unanswered];
}

/** What people were told is done and the database does not hold, or holds twice. */
function lostChanges(file: string, lives: readonly Life[]): readonly string[] {
  const database = new SqliteDatabase(file, { readonly: true });
  const count = (sql: string, ...values: readonly string[]) =>
    Number(
      database
        .prepare(sql)
        .pluck()
        .get(...values),
    );
  const wrong = lives.flatMap((life) => {
    const name = life.text.slice(0, 9);
    const drafts = count(
      'SELECT count(*) FROM plan_versions WHERE version = 1 AND text LIKE ?',
      `${life.text.slice(0, life.text.indexOf(' end'))} end%`,
    );
    const { planId } = life;
    if (drafts !== 1 && !(life.isDoubtful && drafts === 0)) return [`${name}: ${drafts} drafts`];
    if (planId === undefined) return [];
    const edits = count(
      'SELECT count(*) FROM plan_versions WHERE plan_id = ? AND cause LIKE ?',
      planId,
      `%${edit}%`,
    );
    const putRights = count(
      'SELECT count(*) FROM plan_versions WHERE plan_id = ? AND text LIKE ? AND cause LIKE ?',
      planId,
      `%${putRight}%`,
      '%editedStamp%',
    );
    const approvals = count(`SELECT count(*) FROM reviews WHERE plan_id = ? AND kind = 'approved'`, planId);
    const classes = count('SELECT count(*) FROM classes WHERE plan_id = ?', planId);
    return [
      ...(edits === 1 ? [] : [`${name}: ${edits} edits`]),
      ...(putRights === (life.isPutRight ? 1 : 0) ? [] : [`${name}: ${putRights} edits of its message`]),
      ...(classes === 1 ? [] : [`${name}: ${classes} classes`]),
      ...(life.approved && approvals !== 1 ? [`${name}: ${approvals} approvals`] : []),
    ];
  });
  database.close();
  return wrong;
}

function blockWith({ blocks = [] }: Message, actionId: string): string | undefined {
  return blocks.find(
    (block) =>
      block.type === 'actions' &&
      block.elements.some((each) => 'action_id' in each && each.action_id === actionId),
  )?.block_id;
}

function keyOf({ metadata }: Message): string | undefined {
  const key = metadata?.event_payload.key;
  return typeof key === 'string' ? key : undefined;
}

function repeated(keys: readonly string[]): readonly string[] {
  return [...new Set(keys.filter((key, place) => key !== '' && keys.indexOf(key) !== place))];
}
