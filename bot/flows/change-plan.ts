import { type ClassProblems, type ClassReport, reportOnPlan } from '../../domain/class-report.ts';
import { decideStep } from '../../domain/plan/decide-step.ts';
import type { Plan, PlanFacts } from '../../domain/plan/plan.ts';
import type { PlanRecord, VersionCause } from '../../domain/plan/plan-life.ts';
import { rebaseEdit } from '../../domain/plan/rebase-edit.ts';
import { type ChangeSize, sizeOfChange } from '../../domain/plan/size-of-change.ts';
import { redoTarget, undoTarget } from '../../domain/plan/undo-target.ts';
import { changesBetween } from '../../domain/shorthand/changes-between.ts';
import { type Change, editPlan } from '../../domain/shorthand/edit-plan.ts';
import { nearEdits } from '../../domain/shorthand/near-edits.ts';
import { printPlan } from '../../domain/shorthand/print-plan.ts';
import { isHeadCoach } from '../../domain/who-may.ts';
import { renderChange, type Told } from '../blocks/change-message.ts';
import { renderEditProblems } from '../blocks/edit-problems.ts';
import { renderLinesFirst } from '../blocks/problem-blocks.ts';
import type { Desk, Message } from '../handling.ts';
import { editsLeftOut } from './edits-left-out.ts';
import { whyNotKept } from './keep-private.ts';
import { runningAnswer, tellLinesSoFar } from './lines-so-far.ts';
import { contextFor, type OpenPlan, openPlan, reportOnVersion, withClass } from './open-plan.ts';
import { answerKey, postInThread, refreshCard } from './post-draft.ts';
import { reportFromText } from './report-from-text.ts';
import { retireAnswer } from './retire-answer.ts';
import { followUpReview } from './review-plan.ts';
import { saveVersion } from './save-version.ts';
import { scheduleFromFacts, tellClashes } from './schedule-class.ts';

/** What became of a wish to change a plan. `kept` changed nothing and says why. */
export type Changed =
  | { readonly kind: 'changed'; readonly open: OpenPlan }
  | { readonly kind: 'kept'; readonly message: Message };

/** Lines of the edit language, made on `version`; on a later one they apply where their lines still stand. */
export async function applyEdit(
  desk: Desk,
  open: OpenPlan,
  by: string,
  edit: string,
  version?: number,
): Promise<Changed> {
  const isPrivate = whyNotKept(desk, edit);
  if (isPrivate !== undefined) return { kind: 'kept', message: isPrivate };
  const { plan, problemCount } = open.version;
  if (plan === undefined || problemCount > 0)
    return { kind: 'kept', message: renderLinesFirst(open, desk.words) };
  const words = await rebased(desk, open, edit, version);
  if (words === undefined) return kept(desk.words.flow.madeOnEarlierVersion(open.record.currentVersion));
  const context = await contextFor(desk, open.record.id);
  const { plan: edited, changes, problems } = editPlan(plan, words, context);
  if (edited === undefined || problems.length > 0) {
    const near = nearEdits(plan, words, problems, context);
    return { kind: 'kept', message: renderEditProblems(open, problems, near, desk.words) };
  }
  const report = reportOnPlan(edited, context);
  return append(desk, open, by, {
    text: printPlan(edited, desk.catalogue),
    report,
    changes,
    cause: { kind: 'edit', words },
  });
}

/** `editedStamp`: by an edit of its own message. `adds`: told with the other lines that follow one by one. */
type Rewriting = { readonly editedStamp?: string; readonly adds?: 'a line' | 'where lines follow' };

/** The class written anew: the whole text, the text with a line put right, or with a line more. */
export async function rewrite(
  desk: Desk,
  open: OpenPlan,
  by: string,
  text: string,
  { editedStamp, adds }: Rewriting = {},
): Promise<Changed> {
  const isPrivate = whyNotKept(desk, text);
  if (isPrivate !== undefined) return { kind: 'kept', message: isPrivate };
  const context = await contextFor(desk, open.record.id);
  const previous = open.version.plan === undefined ? {} : { previousPlan: open.version.plan };
  const report = await reportFromText(
    desk,
    text,
    { ...context, ...previous },
    open.record.authorId,
    open.scheduled,
  );
  const cause = { kind: 'written', ...(editedStamp === undefined ? {} : { editedStamp }) } as const;
  const changes = linesChanged(desk, open, report);
  const { id, currentVersion } = open.record;
  const leftOut = editedStamp === undefined ? [] : await editsLeftOut(desk, id, text, context);
  const isLine =
    adds === 'a line' ||
    (adds !== undefined && (await runningAnswer(desk, id, currentVersion)) !== undefined);
  return append(desk, open, by, { text, report, changes, leftOut, cause, isLine });
}

/** Date, time, room and people as picked in the form; the title line says them from then on. */
export async function putOnCalendar(
  desk: Desk,
  open: OpenPlan,
  by: string,
  facts: Pick<PlanFacts, 'startsAt' | 'room' | 'people'>,
): Promise<Changed> {
  const { plan, problemCount } = open.version;
  if (plan === undefined || problemCount > 0) return kept(desk.words.flow.fixLinesFirst);
  const dated: Plan = { ...plan, facts: { ...plan.facts, ...facts } };
  const report = reportOnPlan(dated, await contextFor(desk, open.record.id));
  const { startsAt } = facts;
  const words = startsAt === undefined ? 'calendar' : `calendar ${startsAt.date} ${startsAt.time}`;
  return append(desk, open, by, {
    text: printPlan(dated, desk.catalogue),
    report,
    changes: changesBetween(plan, dated, desk.catalogue),
    cause: { kind: 'edit', words },
  });
}

export async function undo(desk: Desk, open: OpenPlan, by: string): Promise<Changed> {
  const versions = await desk.stores.plans.listVersions(desk.studioId, open.record.id);
  const target = undoTarget(versions);
  return target === undefined
    ? kept(desk.words.flow.nothingToUndo)
    : restore(desk, open, by, { kind: 'undo', restores: target });
}

export async function redo(desk: Desk, open: OpenPlan, by: string): Promise<Changed> {
  const versions = await desk.stores.plans.listVersions(desk.studioId, open.record.id);
  const target = redoTarget(versions);
  return target === undefined
    ? kept(desk.words.flow.nothingToRedo)
    : restore(desk, open, by, { kind: 'redo', restores: target });
}

async function restore(
  desk: Desk,
  open: OpenPlan,
  by: string,
  cause: Extract<VersionCause, { restores: number }>,
): Promise<Changed> {
  const target = await desk.stores.plans.findVersion(desk.studioId, open.record.id, cause.restores);
  if (target === undefined) return kept(desk.words.flow.nothingToUndo);
  const report = reportOnVersion(target, await contextFor(desk, open.record.id));
  const changes = linesChanged(desk, open, report);
  return append(desk, open, by, { text: target.text, report, changes, cause });
}

/** Line by line, where both read whole; a draft that is being put right is told as it stands. */
function linesChanged(
  desk: Desk,
  { version, report: before }: OpenPlan,
  after: ClassReport | ClassProblems,
): readonly Change[] {
  const was = version.plan;
  if (was === undefined || before.kind === 'problems' || after.kind === 'problems') return [];
  return changesBetween(was, after.plan, desk.catalogue);
}

type Next = Told & {
  readonly text: string;
  readonly report: ClassReport | ClassProblems;
  readonly cause: VersionCause;
  /** One of several lines that follow each other. */
  readonly isLine?: boolean;
};

async function append(desk: Desk, before: OpenPlan, by: string, next: Next): Promise<Changed> {
  const decision = decideStep(
    before.record,
    {
      kind: 'change',
      by,
      at: desk.now,
      problemCount: next.report.kind === 'problems' ? next.report.problems.length : 0,
      size: await sizeSinceApproval(desk, before.record, next.report.plan),
      note: desk.words.coach.keepsApproval,
    },
    desk.settings,
  );
  if (decision.kind === 'refused') return kept(desk.words.refusal(decision));
  const { record } = decision;
  await desk.stores.plans.update(desk.studioId, record);
  if (decision.lifeStep !== undefined)
    await desk.stores.reviews.add(desk.studioId, record.id, decision.lifeStep);
  const version = await saveVersion(desk, record, { ...next, by });
  await scheduleFromFacts(desk, { record, version, report: next.report });
  const after = await withClass(desk, { record, version, report: next.report });
  await refreshCard(desk, after, `v${record.currentVersion}`);
  if (next.isLine) await tellLinesSoFar(desk, before, after);
  else await tellChange(desk, before, after, next);
  await followUpReview(desk, before, after);
  await tellClashes(desk, after);
  return { kind: 'changed', open: after };
}

async function tellChange(desk: Desk, before: OpenPlan, after: OpenPlan, told: Told): Promise<void> {
  const { id, currentVersion } = after.record;
  await retireAnswer(desk, id, before.record.currentVersion);
  const key = answerKey(id, currentVersion);
  for (const [place, answer] of renderChange(before, after, told, desk).entries())
    await postInThread(desk, after, place === 0 ? key : `${key}:${place + 1}`, answer);
}

/** Against the version a coach approved last, so that small changes do not add up unseen. */
async function sizeSinceApproval(
  desk: Desk,
  { id, state }: PlanRecord,
  plan: Plan | undefined,
): Promise<ChangeSize> {
  if (state !== 'approved' || plan === undefined) return 'large';
  const steps = await desk.stores.reviews.list(desk.studioId, id);
  const last = steps.findLast(({ kind, by }) => kind === 'approved' && isHeadCoach(desk.settings, by));
  const approved = last && (await desk.stores.plans.findVersion(desk.studioId, id, last.version));
  return approved?.plan === undefined ? 'large' : sizeOfChange(approved.plan, plan);
}

async function rebased(
  desk: Desk,
  open: OpenPlan,
  edit: string,
  version: number | undefined,
): Promise<string | undefined> {
  if (version === undefined || version === open.record.currentVersion) return edit;
  const madeOn = await openPlan(desk, open.record.id, version);
  const [then, now] = [madeOn?.version.plan, open.version.plan];
  return then === undefined || now === undefined ? undefined : rebaseEdit(edit, then, now);
}

function kept(text: string): Changed {
  return { kind: 'kept', message: { text } };
}
