import { type DestinationStream, type Logger as Pino, pino } from 'pino';
import { ZodError } from 'zod';

/** Facts for one line: ids, codes and numbers, never what a person wrote. */
export type LogFacts = Readonly<Record<string, string | number | boolean | undefined | readonly string[]>>;

export type Log = {
  readonly info: (event: string, facts?: LogFacts) => void;
  readonly warn: (event: string, facts?: LogFacts) => void;
  readonly error: (event: string, facts?: LogFacts) => void;
};

const tokenLike = /\b(?:xox[a-z]-|xapp-)[\w-]+|https:\/\/hooks\.slack\.com\/[^\s"\\]+/g;

/**
 * JSON lines. Whatever looks like a token, and each of `secrets`, is struck out of the finished line, so no
 * path to the log can let one through.
 */
export function createLog(options: {
  readonly secrets: readonly string[];
  readonly destination?: DestinationStream;
}): Log {
  const secrets = options.secrets.filter((secret) => secret.length >= 6);
  const strike = (line: string) =>
    secrets.reduce(
      (kept, secret) => kept.replaceAll(secret, '[secret]'),
      line.replace(tokenLike, '[secret]'),
    );
  const settings = { base: {}, hooks: { streamWrite: strike } };
  const lines: Pino =
    options.destination === undefined ? pino(settings) : pino(settings, options.destination);
  return {
    info: (event, facts = {}) => lines.info(facts, event),
    warn: (event, facts = {}) => lines.warn(facts, event),
    error: (event, facts = {}) => lines.error(facts, event),
  };
}

/**
 * What may be told of an error in a log: its name, code and place in the code. Its message is left out, since
 * it may quote what a person wrote.
 */
export function errorFacts(error: unknown): LogFacts {
  if (!(error instanceof Error)) return { errorName: typeof error };
  const { stack = '', message } = error;
  const frames = stack
    .slice(stack.indexOf(message) + message.length)
    .split('\n')
    .filter((line) => /^\s+at /.test(line))
    .slice(0, 8)
    .map((line) => line.trim());
  const paths = error instanceof ZodError ? error.issues.map(({ path }) => path.join('.')) : undefined;
  return { errorName: error.name, errorCode: codeOf(error), errorPaths: paths, errorFrames: frames };
}

/** The code of an error, or of the first of its causes that has one. */
export function codeOf(error: unknown): string | undefined {
  if (!(error instanceof Error)) return undefined;
  if ('data' in error && typeof error.data === 'object' && error.data !== null && 'error' in error.data) {
    const { error: code } = error.data;
    if (typeof code === 'string' && /^[a-z_]+$/.test(code)) return code;
  }
  if ('code' in error && typeof error.code === 'string' && /^[\w-]{1,60}$/.test(error.code))
    return error.code;
  return codeOf(error.cause);
}
