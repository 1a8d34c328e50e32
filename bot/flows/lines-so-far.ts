import type { StoredNotice } from '../../domain/ports.ts';
import { renderLinesSoFar } from '../blocks/change-message.ts';
import type { Desk } from '../handling.ts';
import { changeMessage, newestOf } from './keep-message.ts';
import type { OpenPlan } from './open-plan.ts';
import { answerKey, linesKey, postInThread } from './post-draft.ts';

/**
 * Says in the draft's thread where it stands while its lines follow one by one: in one message that is kept up to
 * date, until another change has an answer of its own.
 */
export async function tellLinesSoFar(desk: Desk, before: OpenPlan, after: OpenPlan): Promise<void> {
  const { id, currentVersion } = before.record;
  const standing = await runningAnswer(desk, id, currentVersion);
  const message = renderLinesSoFar(after, desk);
  if (standing === undefined)
    await postInThread(desk, after, linesKey(id, after.record.currentVersion), message);
  else await changeMessage(desk, standing, message);
}

/** The message that tells of the lines up to this version; undefined where the last change was another. */
export async function runningAnswer(
  desk: Desk,
  planId: string,
  version: number,
): Promise<StoredNotice | undefined> {
  for (let at = version; at > 0; at -= 1) {
    const running = await newestOf(desk, linesKey(planId, at));
    if (running !== undefined) return running;
    if ((await desk.stores.notices.find(desk.studioId, answerKey(planId, at))) !== undefined)
      return undefined;
  }
  return undefined;
}
