import { execFile, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { build } from 'esbuild';
import fc from 'fast-check';

const root = new URL('../../../', import.meta.url).pathname;

/** False where no strace is installed, or where it may not trace. */
export const canTrace: boolean =
  spawnSync('strace', ['-o', '/dev/null', '-e', 'trace=none', 'true']).status === 0;

export const noTraceNotice = 'skipped: no strace here that may trace (Debian: strace)';

type Traced =
  | { readonly kind: 'write'; readonly file: string; readonly offset: number; readonly data: Buffer }
  | { readonly kind: 'sync'; readonly file: string }
  | { readonly kind: 'shorten'; readonly file: string; readonly length: number }
  | { readonly kind: 'remove'; readonly file: string }
  | { readonly kind: 'told'; readonly key: string };

/** Runs the writer under strace and reads what it asked of the system, in order. */
export async function traceWrites(rows: number, synchronous: 'FULL' | 'NORMAL' | 'OFF') {
  const folder = mkdtempSync(join(tmpdir(), 'evenset-power-'));
  const cache = join(root, 'node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  const bundled = mkdtempSync(join(cache, 'evenset-power-'));
  const [writer, trace] = [join(bundled, 'write-rows.js'), join(folder, 'trace')];
  try {
    await build({
      absWorkingDir: root,
      entryPoints: [new URL('./write-rows.ts', import.meta.url).pathname],
      bundle: true,
      format: 'esm',
      platform: 'node',
      packages: 'external',
      logLevel: 'warning',
      outfile: writer,
    });
    const calls = 'trace=pwrite64,pwritev,write,writev,fsync,fdatasync,ftruncate,unlink';
    const file = join(folder, 'evenset.sqlite');
    const asked = ['-y', '-xx', '-s', '1000000', '-e', calls, '-o', trace, process.execPath, writer];
    await new Promise<void>((resolve) => {
      execFile('strace', [...asked, file, String(rows), synchronous], () => resolve());
    });
    return readTrace(readFileSync(trace, 'latin1'), file);
  } finally {
    rmSync(folder, { recursive: true });
    rmSync(bundled, { recursive: true });
  }
}

function readTrace(trace: string, database: string): readonly Traced[] {
  return trace.split('\n').flatMap((line): readonly Traced[] => {
    const [, name = '', rest = ''] = /^(\w+)\((.*)\)\s+= \d+$/.exec(line) ?? [];
    const parts = /^(\d*)(?:<([^>]*)>)?(.*)$/.exec(rest);
    const path = plain(parts?.[2] ?? '');
    const [, data = '', numbers = ''] = /^, "([^"]*)"(.*)$/.exec(parts?.[3] ?? '') ?? [];
    if (name === 'write' && parts?.[1] === '1') {
      const key = plain(data).trim();
      return [{ kind: 'told', key }];
    }
    if (name === 'unlink') {
      const file = plain(/"([^"]*)"/.exec(rest)?.[1] ?? '');
      return file.startsWith(database) ? [{ kind: 'remove', file: file.slice(database.length) }] : [];
    }
    if (!path.startsWith(database)) return [];
    const file = path.slice(database.length);
    switch (name) {
      case 'pwrite64': {
        const offset = Number(/, (\d+)$/.exec(numbers)?.[1]);
        return [{ kind: 'write', file, offset, data: Buffer.from(plain(data), 'latin1') }];
      }
      case 'fsync':
      case 'fdatasync':
        return [{ kind: 'sync', file }];
      case 'ftruncate':
        return [{ kind: 'shorten', file, length: Number(/, (\d+)$/.exec(rest)?.[1]) }];
      default:
        throw new Error(`A call of the writer that the replay does not know: ${name}`);
    }
  });
}

function plain(hex: string): string {
  return hex.replace(/\\x([\da-f]{2})/g, (_all, digits: string) =>
    String.fromCharCode(Number.parseInt(digits, 16)),
  );
}

type OnDisk = { synced: Buffer; waiting: { readonly offset: number; readonly data: Buffer }[] };

/** What a cut leaves of the writes that no sync has followed. */
const remains = ['none of them', 'all of them', 'some of their sectors'] as const;
const sector = 512;

export type Cuts = {
  readonly images: number;
  /** Images without a row that was told before the cut. */
  readonly losing: number;
  readonly corrupt: number;
};

/** Cuts the power after each call and looks at what is left, three ways each. */
export function cutPower(traced: readonly Traced[], folder: string): Cuts {
  const files = new Map<string, OnDisk>();
  const told: string[] = [];
  let [images, losing, corrupt] = [0, 0, 0];
  let hasBegun = false;
  const coins = fc.sample(fc.nat(), { numRuns: traced.length * 40, seed: 7 });
  const onDisk = (file: string): OnDisk => {
    const known = files.get(file) ?? { synced: Buffer.alloc(0), waiting: [] };
    files.set(file, known);
    return known;
  };
  for (const call of traced) {
    switch (call.kind) {
      case 'write':
        onDisk(call.file).waiting.push(call);
        break;
      case 'sync': {
        const disk = onDisk(call.file);
        disk.synced = disk.waiting.reduce(withWrite, disk.synced);
        disk.waiting = [];
        break;
      }
      case 'shorten': {
        const disk = onDisk(call.file);
        disk.synced = disk.waiting.reduce(withWrite, disk.synced).subarray(0, call.length);
        disk.waiting = [];
        break;
      }
      case 'remove':
        files.delete(call.file);
        break;
      case 'told':
        if (call.key === 'begun') hasBegun = true;
        else told.push(call.key);
        break;
    }
    if (!hasBegun) continue;
    for (const remain of remains) {
      images += 1;
      const image = new Map([...files].map(([file, disk]) => [file, imageOf(disk, remain, coins)]));
      const keys = keysIn(image, folder);
      if (keys === undefined) corrupt += 1;
      else if (told.some((key) => !keys.has(key))) losing += 1;
    }
  }
  return { images, losing, corrupt };
}

function withWrite(
  content: Buffer,
  { offset, data }: { readonly offset: number; readonly data: Buffer },
): Buffer {
  const grown = Buffer.alloc(Math.max(content.length, offset + data.length));
  content.copy(grown);
  data.copy(grown, offset);
  return grown;
}

function imageOf({ synced, waiting }: OnDisk, remain: (typeof remains)[number], coins: number[]): Buffer {
  switch (remain) {
    case 'none of them':
      return synced;
    case 'all of them':
      return waiting.reduce(withWrite, synced);
    case 'some of their sectors':
      return waiting
        .flatMap((write) => sectorsOf(write))
        .reduce((content, part) => {
          const coin = coins.pop() ?? 0;
          return coin % 2 === 0 ? content : withWrite(content, part);
        }, synced);
  }
}

function sectorsOf({ offset, data }: { readonly offset: number; readonly data: Buffer }) {
  const parts: { readonly offset: number; readonly data: Buffer }[] = [];
  for (let from = 0; from < data.length; ) {
    const until = Math.min(data.length, from + sector - ((offset + from) % sector));
    parts.push({ offset: offset + from, data: data.subarray(from, until) });
    from = until;
  }
  return parts;
}

/** The delivery keys an image holds once SQLite has recovered it; nothing where it is damaged. */
function keysIn(image: ReadonlyMap<string, Buffer>, folder: string): ReadonlySet<string> | undefined {
  const file = join(folder, 'image');
  for (const side of ['', '-wal', '-shm', '-journal']) rmSync(`${file}${side}`, { force: true });
  for (const [side, content] of image) writeFileSync(`${file}${side}`, content);
  let database: SqliteDatabase.Database | undefined;
  try {
    database = new SqliteDatabase(file, { fileMustExist: true });
    if (database.pragma('integrity_check', { simple: true }) !== 'ok') return undefined;
    if (database.prepare('SELECT count(*) FROM pragma_foreign_key_check').pluck().get() !== 0)
      return undefined;
    return new Set(database.prepare('SELECT delivery_key FROM deliveries').pluck().all().map(String));
  } catch {
    return undefined;
  } finally {
    database?.close();
  }
}
