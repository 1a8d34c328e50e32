import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http';
import type { Log } from './log.ts';

const mostSkewSeconds = 300;
const rememberedMs = 10 * 60_000;

/** A legal click carries its whole message or home: up to 180 KiB were measured. */
export const mostBodyBytes = 1_048_576;

/**
 * Stands before the library's signature check and refuses what that lets pass: timestamps from the future,
 * and the same signed request a second time. Signatures are remembered for ten minutes, longer than a
 * timestamp stays good.
 */
export function guardRequests(
  next: RequestListener,
  options: { readonly nowMs: () => number; readonly log: Log },
): RequestListener {
  const { nowMs, log } = options;
  /** From signature to the time it was seen; insertion order is order of time. */
  const seen = new Map<string, number>();

  const forgetOld = () => {
    for (const [signature, atMs] of seen) {
      if (atMs > nowMs() - rememberedMs) return;
      seen.delete(signature);
    }
  };

  const refuse = (response: ServerResponse, status: number, reason: string) => {
    log.warn('request refused', { reason, status });
    response.writeHead(status, { connection: 'close' });
    response.end();
  };

  return (request, response) => {
    const signature = headerOf(request, 'x-slack-signature');
    if (Number(headerOf(request, 'content-length') ?? 0) > mostBodyBytes)
      return refuse(response, 413, 'body too large');
    if (signature === undefined) return next(request, response);
    const sentSeconds = Number(headerOf(request, 'x-slack-request-timestamp') ?? Number.NaN);
    const skewSeconds = Math.abs(nowMs() / 1_000 - sentSeconds);
    if (!(skewSeconds <= mostSkewSeconds)) return refuse(response, 401, 'timestamp too far off');
    forgetOld();
    if (seen.has(signature)) return refuse(response, 401, 'signature seen before');
    seen.set(signature, nowMs());
    response.once('finish', () => {
      // A forged one is forgotten, so that it can't take the place of a true one or fill the memory.
      if (response.statusCode === 401) seen.delete(signature);
      // The rest of an overlong body is not waited for.
      if (response.statusCode === 413) request.socket.destroySoon();
    });
    return next(request, response);
  };
}

function headerOf(request: IncomingMessage, name: string): string | undefined {
  const value = request.headers[name];
  return typeof value === 'string' ? value : undefined;
}
