import type { Outcome, ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { readTaughtLine } from '../../domain/week/taught-patterns.ts';
import { mayRunClass } from '../../domain/who-may.ts';
import { renderAfterClass } from '../blocks/after-class-message.ts';
import type { Desk, Message } from '../handling.ts';
import { findClass } from './classes-in-week.ts';
import { correctWeekReport } from './correct-week-report.ts';
import { standingVersion } from './standing-version.ts';

/** What became of marking a class. */
export type Marked = { readonly kind: 'marked' } | { readonly kind: 'kept'; readonly message: Message };

export function afterClassKey(classId: string): string {
  return `after:${classId}`;
}

/** Notes what was said of a class: how it went, how hard it was, whether it ran over. A later word on each wins. */
export async function markClass(
  desk: Desk,
  classId: string,
  by: string,
  said: Partial<Pick<Outcome, 'how' | 'changes' | 'effort' | 'length'>>,
): Promise<Marked> {
  const scheduled = await findClass(desk, classId);
  if (scheduled === undefined) return kept(desk.words.flow.buttonGone);
  const refused = whyNotMarked(desk, scheduled, by);
  if (refused !== undefined) return { kind: 'kept', message: refused };
  const { changes: _, ...withoutChanges } = scheduled.outcome ?? {};
  const outcome: Outcome = {
    how: 'as planned',
    ...(said.how === undefined ? scheduled.outcome : withoutChanges),
    ...(scheduled.outcome?.how === 'as planned, assumed' ? { how: 'as planned' as const } : {}),
    ...said,
    saidBy: by,
    saidAt: desk.now,
  };
  await keepOutcome(desk, scheduled, outcome);
  const marked = { ...scheduled, outcome };
  // Who has switched the question off has no message to bring up to date.
  const asked = await desk.stores.notices.find(desk.studioId, afterClassKey(classId));
  if (asked === undefined) return { kind: 'marked' };
  await desk.stores.notices.enqueue(desk.studioId, {
    key: `${afterClassKey(classId)}:${desk.newId()}`,
    to: asked.to,
    action: { kind: 'update', of: afterClassKey(classId) },
    payload: renderAfterClass(marked, desk.words),
    causedAt: desk.now,
  });
  return { kind: 'marked' };
}

/** Why this person can't say how this class went, now; undefined where they can. */
export function whyNotMarked(
  { settings, words, now }: Desk,
  scheduled: ScheduledClass,
  by: string,
): Message | undefined {
  if (!mayRunClass(settings, scheduled, by)) return { text: words.flow.onlyInstructorMarks };
  return scheduled.startsAt.instant > now ? { text: words.classes.notThisClass } : undefined;
}

/**
 * Counts a class: its state, its outcome, and the load of the plan that stood for it; without a plan the
 * patterns that a line `taught: …` names.
 */
export async function keepOutcome(desk: Desk, scheduled: ScheduledClass, outcome: Outcome): Promise<void> {
  const taught = outcome.how !== 'not taught';
  await desk.stores.classes.save(desk.studioId, scheduled);
  await desk.stores.classes.setState(desk.studioId, scheduled.id, taught ? 'taught' : 'not taught', outcome);
  const version = taught ? await standingVersion(desk, scheduled) : undefined;
  await desk.stores.classes.saveLoad(
    desk.studioId,
    scheduled.id,
    version?.load ?? [],
    version?.setsByPattern ?? (taught ? patternsSaid(outcome) : {}),
  );
  await correctWeekReport(desk, scheduled, { ...scheduled, outcome });
}

/** How many sets there were is not known: each pattern named counts as there. */
function patternsSaid({ changes = '' }: Outcome): Readonly<Record<string, number>> {
  return Object.fromEntries((readTaughtLine(changes)?.patterns ?? []).map((pattern) => [pattern, 1]));
}

function kept(text: string): Marked {
  return { kind: 'kept', message: { text } };
}
