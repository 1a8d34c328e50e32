import type { Handler, LeftRequest } from '../handling.ts';
import { noReaction } from '../handling.ts';

/** The app was taken away: nothing more is sent, and the data goes after a while. */
export const onLeft: Handler<LeftRequest> = async (_request, desk) => {
  await desk.stores.care.markLeft(desk.studioId, desk.now);
  return noReaction;
};
