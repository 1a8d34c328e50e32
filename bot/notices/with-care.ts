import { instantAfter } from '../../domain/calendar/wall-time.ts';
import { learnTransitions } from '../flows/learn-transitions.ts';
import type { Desk } from '../handling.ts';
import type { Due } from './clock-loop.ts';

const daySeconds = 86_400;
/** So long the data of a studio that left is kept, should it come back. Ours. */
const leftDays = 30;

/**
 * What falls due, and once a day what is old goes and the factor on change-overs is looked at. A studio that has left is told nothing; after thirty days its
 * data is deleted.
 */
export function withCare(due: Due): Due {
  return {
    enqueueDue: async (desk) => {
      const { caredAt, leftAt } = await desk.stores.care.findCare(desk.studioId);
      if (leftAt !== undefined) return deleteLeft(desk, leftAt, caredAt);
      if (caredAt === undefined || instantAfter(caredAt, daySeconds) <= desk.now || desk.now < caredAt)
        return due.enqueueDue(await careDaily(desk));
      return due.enqueueDue(desk);
    },
    nextDueAt: async (desk) => {
      const { leftAt } = await desk.stores.care.findCare(desk.studioId);
      return leftAt === undefined ? due.nextDueAt(desk) : undefined;
    },
  };
}

async function careDaily(desk: Desk): Promise<Desk> {
  const { stores, studioId, settings, now } = desk;
  await stores.care.retain(studioId, settings.retention, now);
  await stores.care.markCared(studioId, now);
  return learnTransitions(desk);
}

async function deleteLeft(
  { stores, studioId, now }: Desk,
  leftAt: string,
  caredAt: string | undefined,
): Promise<void> {
  const goesAt = instantAfter(leftAt, leftDays * daySeconds);
  const isGone = caredAt !== undefined && caredAt >= goesAt;
  if (now < goesAt || isGone) return;
  await stores.care.deleteStudio(studioId);
  await stores.care.markCared(studioId, now);
}
