/** Why storage could not do its work; `full` and `busy` pass, the change is tried again later. */
export type StorageFault = { readonly kind: 'full' | 'busy' | 'other'; readonly code: string };

/** The fault behind an error of SQLite or of the file system; undefined where it is something else: a bug. */
export function readStorageFault(error: unknown): StorageFault | undefined {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') return undefined;
  const { code } = error;
  if (code === 'SQLITE_FULL' || code === 'ENOSPC') return { kind: 'full', code };
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) return { kind: 'busy', code };
  return /^SQLITE_(?!CONSTRAINT|ERROR|MISUSE|RANGE|MISMATCH)/.test(code)
    ? { kind: 'other', code }
    : undefined;
}
