const passes = /^(?:SQLITE_(?:FULL|BUSY|LOCKED|IOERR|READONLY|CANTOPEN)|ENOSPC|EIO)/;

/** True for an error of SQLite or of the file system that passes, or one that was caused by it; a bug does not. */
export function isStorageFault(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  if ('code' in error && typeof error.code === 'string') return passes.test(error.code);
  return isStorageFault(error.cause);
}
