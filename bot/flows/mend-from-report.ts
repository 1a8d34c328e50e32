import type { NoticePayload } from '../../domain/ports.ts';
import { context } from '../blocks/elements.ts';
import { inertText } from '../blocks/escape.ts';
import { mendBlockId } from '../blocks/week-message.ts';
import type { Desk, Message } from '../handling.ts';
import { applyEdit } from './change-plan.ts';
import type { OpenPlan } from './open-plan.ts';
import { postInThread, textKey } from './post-draft.ts';

/** What became of pressing the report's one edit. */
type MendOutcome = { readonly kind: 'mended' } | { readonly kind: 'kept'; readonly message: Message };

/**
 * Applies the edit a week's report proposed, once: by the plan's author or a head coach. The report then says
 * who did it in the place of the button, and the plan's thread tells the author.
 */
export async function mendFromReport(
  desk: Desk,
  open: OpenPlan,
  by: string,
  wanted: { readonly edit: string; readonly version: number; readonly reportKey: string },
): Promise<MendOutcome> {
  const { stores, studioId, words, now } = desk;
  const { edit, version, reportKey } = wanted;
  const appliedKey = `${reportKey}:applied`;
  const report = isReportKey(reportKey) ? await stores.notices.find(studioId, reportKey) : undefined;
  // An old report's text is not kept, so what stands in its place now could not be said with it.
  if (report === undefined || report.payload.text === '') return kept(words.flow.buttonGone);
  if ((await stores.notices.find(studioId, appliedKey)) !== undefined) return kept(words.week.mendGone);
  const changed = await applyEdit(desk, open, by, edit, version);
  if (changed.kind === 'kept') return changed;
  const { record, scheduled } = changed.open;
  const said = words.week.mendApplied(by, inertText(edit), record.currentVersion);
  await stores.notices.enqueue(studioId, {
    key: appliedKey,
    to: report.to,
    action: { kind: 'update', of: reportKey },
    payload: withMendDone(report.payload, said),
    causedAt: now,
  });
  if (by !== record.authorId) {
    const week = reportKey.slice('week:'.length);
    const slotName = inertText(scheduled?.title ?? words.card.untitled);
    await tellAuthor(desk, changed.open, `answer:${record.id}:mended:${week}`, {
      text: words.week.mendForAuthor(by, slotName, week),
    });
  }
  return { kind: 'mended' };
}

/** The message of a week's report itself, and none of those about it. */
function isReportKey(key: string): boolean {
  return /^week:\d{4}-W\d{2}$/.test(key);
}

/** In the plan's thread; directly, for a plan that has none. */
async function tellAuthor(desk: Desk, open: OpenPlan, key: string, message: Message): Promise<void> {
  const { id, home, authorId } = open.record;
  const hasThread =
    home !== undefined || (await desk.stores.notices.find(desk.studioId, textKey(id))) !== undefined;
  if (hasThread) return postInThread(desk, open, key, message);
  await desk.stores.notices.enqueue(desk.studioId, {
    key,
    to: authorId,
    action: { kind: 'post' },
    payload: message,
    causedAt: desk.now,
  });
}

/** The report as it was posted, with who applied the edit in the place of its button. */
function withMendDone(payload: NoticePayload, said: string): NoticePayload {
  const done = context('mend-done', said);
  const blocks = (payload.blocks ?? []).flatMap((block) => {
    if (hasId(block, mendBlockId)) return [done];
    return hasId(block, 'mend-hint') ? [] : [block];
  });
  return { text: `${payload.text} ${said}`, blocks };
}

function hasId(block: unknown, id: string): boolean {
  return typeof block === 'object' && block !== null && 'block_id' in block && block.block_id === id;
}

function kept(text: string): MendOutcome {
  return { kind: 'kept', message: { text } };
}
