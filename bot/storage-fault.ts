import { codeOf } from './log.ts';

/** True where storage could not write for a reason that passes: disk full, busy, failing or read-only. */
export function isStorageFault(error: unknown): boolean {
  return /^(?:SQLITE_(?:FULL|BUSY|LOCKED|IOERR|READONLY|CANTOPEN)|ENOSPC|EIO)/.test(codeOf(error) ?? '');
}
