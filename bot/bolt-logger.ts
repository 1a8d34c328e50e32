import { type Logger, LogLevel } from '@slack/bolt';
import type { Log, LogFacts } from './log.ts';

const mostOfDetail = 200;

/** A refusal of the platform, or what became of a connection. */
const codes =
  /API error(?: occurred)?: ([a-z_]+)|\b(E(?:CONN[A-Z]+|TIMEDOUT|NOTFOUND|AI_AGAIN|PIPE|HOSTUNREACH))\b/;

/**
 * The libraries' logger. Their debug lines quote payloads, so those and the informal ones are dropped. Of the
 * rest the fixed words that open a line are kept, and a code; what follows may quote what was received.
 */
export function createBoltLogger(log: Log): Logger {
  const factsOf = (parts: readonly unknown[]): LogFacts => {
    const text = parts.filter((part) => typeof part === 'string').join(' ');
    const [lead = ''] = /^[^:("'`{[<]*/.exec(text) ?? [];
    const found = codes.exec(text);
    return { detail: lead.trim().slice(0, mostOfDetail), code: found?.[1] ?? found?.[2] };
  };
  return {
    debug: () => {},
    info: () => {},
    warn: (...parts) => log.warn('library', factsOf(parts)),
    error: (...parts) => log.error('library', factsOf(parts)),
    setLevel: () => {},
    getLevel: () => LogLevel.INFO,
    setName: () => {},
  };
}
