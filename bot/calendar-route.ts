import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Storage } from '../domain/ports.ts';
import { calendarOf } from './flows/calendar-feed.ts';
import { errorFacts, type Log } from './log.ts';
import type { MakeDesk } from './make-desk.ts';

export const calendarPath = '/calendar/:file';

export type CalendarRoute = {
  readonly path: typeof calendarPath;
  readonly method: 'GET';
  readonly handler: (request: IncomingMessage, response: ServerResponse) => void;
};

export function isCalendarUrl(url: string): boolean {
  return tokenOf(url) !== undefined;
}

/** The feed of the studio whose token stands in the address; any other address is not found. */
export function calendarRoute(parts: {
  readonly storage: Storage;
  readonly makeDesk: MakeDesk;
  readonly log: Log;
}): CalendarRoute {
  const { storage, makeDesk, log } = parts;

  const feedOf = async (url: string): Promise<string | undefined> => {
    const token = tokenOf(url);
    const studioId = token === undefined ? undefined : await storage.timetable.findStudioOfFeed(token);
    return studioId === undefined ? undefined : calendarOf(await makeDesk(studioId, storage));
  };

  return {
    path: calendarPath,
    method: 'GET',
    handler: (request, response) => {
      feedOf(request.url ?? '').then(
        (feed) => answer(response, feed === undefined ? 404 : 200, feed),
        (error: unknown) => {
          log.error('calendar feed not made', errorFacts(error));
          answer(response, 503, undefined);
        },
      );
    },
  };
}

/** 32 random bytes in URL-safe base 64. */
function tokenOf(url: string): string | undefined {
  return /^\/calendar\/([\w-]{43})\.ics$/.exec(url)?.[1];
}

function answer(response: ServerResponse, status: number, feed: string | undefined): void {
  response.writeHead(status, {
    'cache-control': 'no-store',
    'referrer-policy': 'no-referrer',
    ...(feed === undefined
      ? {}
      : {
          'content-type': 'text/calendar; charset=utf-8',
          'content-disposition': 'inline; filename="timetable.ics"',
        }),
  });
  response.end(feed);
}
