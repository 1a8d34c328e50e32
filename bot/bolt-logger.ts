import { type Logger, LogLevel } from '@slack/bolt';
import type { Log } from './log.ts';

/**
 * The libraries' logger. Their debug lines quote payloads, so those and the informal ones are dropped; the
 * rest is cut short, since it is free text.
 */
export function createBoltLogger(log: Log): Logger {
  const text = (parts: readonly unknown[]) =>
    parts
      .filter((part) => typeof part === 'string')
      .join(' ')
      .slice(0, 200);
  return {
    debug: () => {},
    info: () => {},
    warn: (...parts) => log.warn('library', { detail: text(parts) }),
    error: (...parts) => log.error('library', { detail: text(parts) }),
    setLevel: () => {},
    getLevel: () => LogLevel.INFO,
    setName: () => {},
  };
}
