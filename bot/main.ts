import { existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { buildManifest } from '../manifest/manifest.ts';
import { backUp, secureCopy } from '../storage/backup.ts';
import { backUpDaily } from '../storage/daily-backups.ts';
import { exportData } from '../storage/export-data.ts';
import { NewerDatabaseError } from '../storage/migrate.ts';
import { openStorage } from '../storage/open-storage.ts';
import { DatabaseInUseError, restore } from '../storage/restore.ts';
import { startDailyBackups } from './daily-backups.ts';
import { type Env, readEnv } from './env.ts';
import { codeOf, createLog, errorFacts } from './log.ts';
import { type Running, StartRefused } from './running.ts';
import { secureCopyApart, secureCopyCommand } from './secure-copy-apart.ts';
import { startLocal, startWorkspaceOnly } from './start-local.ts';
import { startReal } from './start-real.ts';

const defaultDataFolder = '.evenset';

const backupsIn = (folder: string) => join(folder, 'backups');
const databaseIn = (folder: string) => join(folder, 'evenset.sqlite');

async function start(env: Env, workspaceOnly: boolean): Promise<Running> {
  const log = createLog({ secrets: env.secrets });
  const manifest = buildManifest({ kind: 'http', requestUrl: 'http://127.0.0.1/slack/events' });
  const { host, port, dataFolder } = env;
  if (workspaceOnly) return startWorkspaceOnly({ host, port, manifest, log });
  if (env.access === undefined) {
    const file = dataFolder === undefined ? ':memory:' : databaseIn(dataFolder);
    return startLocal({
      host,
      port,
      manifest,
      log,
      openStorage: () => openStorage({ file }),
      mayReset: dataFolder === undefined,
    });
  }
  const folder = dataFolder ?? defaultDataFolder;
  const storage = openStorage({ file: databaseIn(folder) });
  const running = await startReal({ env, access: env.access, storage, log });
  const backups = startDailyBackups({
    backUp: () => backUpDaily(storage, backupsIn(folder), new Date().toISOString(), secureCopyApart),
    log,
  });
  return {
    ...running,
    stop: async () => {
      await backups.stop();
      await running.stop();
      await storage.close();
    },
  };
}

/** `backup [file]`, `restore file`, `export file`: done on the data folder, told in a line, nothing is served. */
async function careFor(folder: string, [command, file]: readonly string[]): Promise<string> {
  const database = databaseIn(folder);
  if (command !== 'backup' && file === undefined)
    throw new StartRefused([`Name the file: npm run ${command} -- path/to/file`]);
  if (command === 'restore') {
    const again = await restore(file ?? '', database);
    return `Restored from ${file}; deletions of people made again: ${again}. What stood there is kept as ${database}.before-restore`;
  }
  if (!existsSync(database))
    throw new StartRefused([`There is no database in ${folder}. Check EVENSET_DATA.`]);
  const storage = openStorage({ file: database });
  try {
    if (command === 'export') {
      await exportData(storage, file ?? '');
      return `Exported to ${file}`;
    }
    const now = new Date().toISOString();
    const made = file ?? join(backupsIn(folder), `evenset-${now.replaceAll(/[:.]/g, '')}.sqlite`);
    mkdirSync(dirname(made), { recursive: true, mode: 0o700 });
    await backUp(storage, made);
    return `Backed up to ${made}`;
  } finally {
    await storage.close();
  }
}

const careCommands: readonly string[] = ['backup', 'restore', 'export'];

/** The signal may come twice, from the terminal and from npm: the drain runs once. */
function stopOnSignals(running: Running): void {
  let isStopping = false;
  const stop = (signal: NodeJS.Signals) => {
    if (isStopping) return;
    isStopping = true;
    process.stderr.write(`${signal}: ending what is under way.\n`);
    running.stop().then(
      () => process.exit(0),
      (error: unknown) => {
        process.stderr.write(`${JSON.stringify(errorFacts(error))}\n`);
        process.exit(1);
      },
    );
  };
  process.on('SIGTERM', stop);
  process.on('SIGINT', stop);
}

/** While serving, what nobody caught is told by name and place alone: its message may quote what a person wrote. */
function endOnFaults(): void {
  process.on('uncaughtException', (error) => {
    process.stderr.write(`${JSON.stringify({ msg: 'ended on a fault', ...errorFacts(error) })}\n`);
    process.exit(1);
  });
}

async function main(): Promise<void> {
  const read = readEnv(process.env);
  if (read.kind === 'unusable') throw new StartRefused(read.problems);
  const given = process.argv.slice(2);
  if (given[0] === secureCopyCommand) return secureCopy(given[1] ?? '');
  if (careCommands.includes(given[0] ?? '')) {
    process.stdout.write(`${await careFor(read.env.dataFolder ?? defaultDataFolder, given)}\n`);
    return;
  }
  const running = await start(read.env, process.argv.includes('--workspace-only'));
  stopOnSignals(running);
  endOnFaults();
  for (const line of running.lines) process.stderr.write(`${line}\n`);
}

/** What a person can mend, in words; nothing for a fault of the app's own. */
function problemsOf(error: unknown): readonly string[] | undefined {
  if (error instanceof StartRefused) return error.problems;
  if (error instanceof NewerDatabaseError || error instanceof DatabaseInUseError) return [error.message];
  switch (codeOf(error)) {
    case 'ENOENT':
      return ['There is no such file. Check its path.'];
    case 'EEXIST':
      return ['That file is there already. Name another.'];
    case 'EADDRINUSE':
      return ['The port is taken by another program. Set PORT to a free one, or stop the other program.'];
    case 'EACCES':
      return ['A file, a folder or the port may not be used by this user. Check EVENSET_DATA and PORT.'];
    default:
      return undefined;
  }
}

main().catch((error: unknown) => {
  const problems = problemsOf(error);
  if (problems === undefined) throw error;
  for (const problem of problems) process.stderr.write(`${problem}\n`);
  process.exit(1);
});
