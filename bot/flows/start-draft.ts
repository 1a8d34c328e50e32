import type { Home, PlanRecord } from '../../domain/plan/plan-life.ts';
import { keepText } from '../../domain/shorthand/keep-text.ts';
import { inertText } from '../blocks/escape.ts';
import { limits, packLines } from '../blocks/limits.ts';
import type { Desk } from '../handling.ts';
import { contextFor, type OpenPlan, withClass } from './open-plan.ts';
import { postCard, textKey } from './post-draft.ts';
import { reportFromText } from './report-from-text.ts';
import { saveVersion } from './save-version.ts';
import { scheduleFromFacts, tellClashes } from './schedule-class.ts';

export type DraftStart = {
  readonly personId: string;
  readonly text: string;
  /** The thread under the person's own message; absent where Evenset posts the text itself. */
  readonly home?: Home;
  /** The stamp of the edit that the text is from, where it is. */
  readonly editedStamp?: string;
};

/** Keeps a class as written, whatever could be read of it, and posts its card. */
export async function startDraft(desk: Desk, start: DraftStart): Promise<OpenPlan> {
  const record: PlanRecord = {
    id: desk.newId(),
    authorId: start.personId,
    state: 'draft',
    currentVersion: 1,
    ...(start.home === undefined ? {} : { home: start.home }),
    createdAt: desk.now,
  };
  const report = await reportFromText(desk, start.text, await contextFor(desk), start.personId);
  await desk.stores.plans.create(desk.studioId, record);
  const version = await saveVersion(desk, record, {
    text: start.text,
    report,
    cause: {
      kind: 'written',
      ...(start.editedStamp === undefined ? {} : { editedStamp: start.editedStamp }),
    },
    by: start.personId,
  });
  if (start.home === undefined) await postText(desk, record, start.text);
  await scheduleFromFacts(desk, { record, version, report });
  const open = await withClass(desk, { record, version, report });
  await postCard(desk, open);
  await tellClashes(desk, open);
  return open;
}

/** What one message does not hold goes on in its thread, above the card. */
async function postText(desk: Desk, record: PlanRecord, text: string): Promise<void> {
  const key = textKey(record.id);
  for (const [place, part] of packLines(inertText(keepText(text)).split('\n'), limits.topLevelText).entries())
    await desk.stores.notices.enqueue(desk.studioId, {
      key: place === 0 ? key : `${key}:${place + 1}`,
      to: record.authorId,
      action: place === 0 ? { kind: 'post' } : { kind: 'post', thread: { noticeKey: key } },
      payload: { text: part },
      causedAt: desk.now,
    });
}
