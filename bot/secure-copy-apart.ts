import { execFile } from 'node:child_process';

/** The command that `main` answers to in the process started here. */
export const secureCopyCommand = 'secure-copy';

/** Checks a backup in a process of its own: reading all of it here would let nobody else be served meanwhile. */
export function secureCopyApart(copy: string): Promise<void> {
  const program = process.argv[1] ?? '';
  const given = [...process.execArgv, program, secureCopyCommand, copy];
  return new Promise((resolve, reject) => {
    execFile(process.execPath, given, { env: {} }, (error, _said, complaint) => {
      if (error === null) resolve();
      else reject(new Error(`The backup could not be checked: ${complaint.trim() || error.message}`));
    });
  });
}
