import { join } from 'node:path';
import { buildManifest } from '../manifest/manifest.ts';
import { NewerDatabaseError } from '../storage/migrate.ts';
import { openStorage } from '../storage/open-storage.ts';
import { type Env, readEnv } from './env.ts';
import { codeOf, createLog, errorFacts } from './log.ts';
import { type Running, StartRefused } from './running.ts';
import { startLocal, startWorkspaceOnly } from './start-local.ts';
import { startReal } from './start-real.ts';

const defaultDataFolder = '.evenset';

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
  const storage = openStorage({ file: databaseIn(dataFolder ?? defaultDataFolder) });
  const running = await startReal({ env, access: env.access, storage, log });
  return {
    ...running,
    stop: async () => {
      await running.stop();
      await storage.close();
    },
  };
}

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

async function main(): Promise<void> {
  const read = readEnv(process.env);
  if (read.kind === 'unusable') throw new StartRefused(read.problems);
  const running = await start(read.env, process.argv.includes('--workspace-only'));
  stopOnSignals(running);
  for (const line of running.lines) process.stderr.write(`${line}\n`);
}

/** What a person can mend, in words; nothing for a fault of the app's own. */
function problemsOf(error: unknown): readonly string[] | undefined {
  if (error instanceof StartRefused) return error.problems;
  if (error instanceof NewerDatabaseError) return [error.message];
  switch (codeOf(error)) {
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
