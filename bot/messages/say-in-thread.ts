import type { Context } from '../../domain/context.ts';
import { openLabels } from '../../domain/plan/open-labels.ts';
import { type Limit, optionLimits } from '../../domain/plan/options-sheet.ts';
import { looksLikeClass, looksLikeEdit, nearestEdit } from '../../domain/shorthand/edit-words.ts';
import { readPlan } from '../../domain/shorthand/read-plan.ts';
import { renderFindings } from '../blocks/findings-lines.ts';
import { renderNearestEdit, renderThreadHelp, renderUnclear } from '../blocks/help-message.ts';
import { renderMuscles } from '../blocks/muscles-lines.ts';
import { renderLinesFirst } from '../blocks/problem-blocks.ts';
import { renderTimeline } from '../blocks/timeline-lines.ts';
import { addsLines, readsAsLines, withLines } from '../flows/adds-lines.ts';
import { answerOptions, answerSwaps } from '../flows/answer-asks.ts';
import { answerLastTime } from '../flows/answer-last-time.ts';
import { applyEdit, type Changed, redo, rewrite, undo } from '../flows/change-plan.ts';
import { listVersions } from '../flows/list-versions.ts';
import { contextFor, type OpenPlan } from '../flows/open-plan.ts';
import { type LinesPutRight, putLinesRight } from '../flows/put-lines-right.ts';
import { approve, askChanges, type Stepped, sendForReview, withdraw } from '../flows/review-plan.ts';
import type { Desk, Message } from '../handling.ts';

type Said = (desk: Desk, open: OpenPlan, by: string, rest: string) => Promise<readonly Message[]>;

/** Whole messages with a meaning of their own in a plan's thread; the first word decides, the rest follows it. */
const threadWords: Readonly<Record<string, Said>> = {
  undo: async (desk, open, by) => answerOf(await undo(desk, open, by)),
  redo: async (desk, open, by) => answerOf(await redo(desk, open, by)),
  timeline: async (desk, open) => renderTimeline(open, desk),
  why: async (desk, open) => renderFindings(open, desk),
  muscles: async (desk, open) => [renderMuscles(open, desk)],
  easier: (desk, open) => answerSwaps(desk, open, 'easier'),
  harder: (desk, open) => answerSwaps(desk, open, 'harder'),
  'no kit': (desk, open) => answerSwaps(desk, open, 'no kit'),
  'last time': (desk, open) => answerLastTime(desk, open),
  versions: async (desk, open) => listVersions(desk, open),
  fill: async (desk, open) => [answerFill(desk, open)],
  send: async (desk, open, by) => answerOf(await sendForReview(desk, open, by)),
  withdraw: async (desk, open, by) => answerOf(await withdraw(desk, open, by)),
  approve: async (desk, open, by, rest) =>
    answerOf(await approve(desk, open, by, open.record.currentVersion, rest.replace(/^:\s*/, ''))),
  changes: async (desk, open, by, rest) =>
    answerOf(await askChanges(desk, open, by, open.record.currentVersion, rest.replace(/^:\s*/, ''))),
  help: async (desk, open) => [renderThreadHelp(open, desk.words)],
};

/** Words that only a class that reads whole can answer. */
const asksThePlan: ReadonlySet<string> = new Set([
  'timeline',
  'why',
  'muscles',
  'easier',
  'harder',
  'no kit',
  'last time',
]);

/** Words that carry on after the first; the others mean something only when they stand alone. */
const takesMore: ReadonlySet<string> = new Set(['changes', 'send', 'approve']);

/**
 * A message in a plan's thread: a word of the thread, edits, one line put right, more lines of a draft, or the
 * class written anew. What it answers beyond the change itself comes back; nothing said is lost.
 */
export async function sayInThread(
  desk: Desk,
  open: OpenPlan,
  by: string,
  text: string,
): Promise<readonly Message[]> {
  const trimmed = text.trim();
  if (trimmed === '') return [renderUnclear(open, desk.words)];
  const ask = Object.hasOwn(threadWords, plainAsk(trimmed)) ? threadWords[plainAsk(trimmed)] : undefined;
  const wanted = limitsIn(trimmed);
  const isAsked = wanted !== undefined || asksThePlan.has(plainAsk(trimmed));
  if (isAsked && open.report.kind === 'problems') return [renderLinesFirst(open, desk.words)];
  if (ask !== undefined) return ask(desk, open, by, '');
  if (wanted !== undefined) return answerOptions(desk, open, wanted);
  const [, first = '', rest = ''] = /^([\p{L}]+)[\s:]*([\s\S]*)$/u.exec(trimmed) ?? [];
  const word = first.toLowerCase();
  if (takesMore.has(word)) return (threadWords[word] ?? noAnswer)(desk, open, by, rest);
  const steps = stepsIn(trimmed);
  if (steps !== undefined) return inTurn(desk, open, by, steps);
  const right = putLinesRight(open.version.text, trimmed);
  if (right !== undefined) return lineAnswer(desk, open, by, right);
  if (looksLikeEdit(trimmed)) return editOrLines(desk, open, by, trimmed);
  const context = await contextFor(desk);
  const { text: draft } = open.version;
  if (goesOn(open, trimmed, context)) {
    const lines = withLines(draft, trimmed);
    return answerOf(await rewrite(desk, open, by, lines, { adds: 'a line' }));
  }
  if (looksLikeClass(trimmed, context)) return answerOf(await rewrite(desk, open, by, trimmed));
  const add = async () =>
    answerOf(await rewrite(desk, open, by, withLines(draft, trimmed), { adds: 'a line' }));
  if (isBeingWritten(open) && readsAsLines(draft, trimmed, context)) return add();
  const near = nearestEdit(trimmed);
  if (near !== undefined) return [renderNearestEdit(open, near, desk.words)];
  return isBeingWritten(open) && addsLines(draft, trimmed, context)
    ? add()
    : [renderUnclear(open, desk.words)];
}

/** Whether words mean something under a class, and nowhere else. */
export function belongsInThread(text: string): boolean {
  const trimmed = text.trim();
  const isWord = Object.hasOwn(threadWords, plainAsk(trimmed));
  return (
    isWord || limitsIn(trimmed) !== undefined || looksLikeEdit(trimmed) || stepsIn(trimmed) !== undefined
  );
}

/** An ask as it stands in the table, whatever its case, spaces and last sign. */
function plainAsk(text: string): string {
  return text
    .toLowerCase()
    .replace(/[\s?.!:]+$/u, '')
    .replaceAll(/\s+/gu, ' ');
}

/** `no jumps, no wrists`: one or more limits of the options sheet, and nothing else. */
function limitsIn(text: string): readonly Limit[] | undefined {
  const parts = plainAsk(text)
    .split(/\s*(?:,|;|\n|\band\b|(?=\bno\b|\bnot\b|\bnothing\b))\s*/u)
    .filter((part) => part !== '');
  const found = parts.flatMap((part) => optionLimits.filter((limit) => limit === part));
  return found.length > 0 && found.length === parts.length ? [...new Set(found)] : undefined;
}

/** `warm-up 6:00` changes the warm-up there is; in a draft still being written it may be the next line. */
async function editOrLines(
  desk: Desk,
  open: OpenPlan,
  by: string,
  text: string,
): Promise<readonly Message[]> {
  const edited = await applyEdit(desk, open, by, text);
  if (edited.kind === 'changed' || !isBeingWritten(open)) return answerOf(edited);
  return readsAsLines(open.version.text, text, await contextFor(desk))
    ? answerOf(await rewrite(desk, open, by, withLines(open.version.text, text), { adds: 'a line' }))
    : answerOf(edited);
}

async function lineAnswer(
  desk: Desk,
  open: OpenPlan,
  by: string,
  right: LinesPutRight,
): Promise<readonly Message[]> {
  const { draft } = desk.words;
  switch (right.kind) {
    case 'text':
      return answerOf(await rewrite(desk, open, by, right.text));
    case 'no such line':
      return [{ text: draft.noSuchLine(right.line, right.last) }];
    case 'nothing left':
      return [{ text: draft.onlyLines }];
  }
}

type Step = { readonly kind: 'undo' | 'redo' } | { readonly kind: 'edits'; readonly text: string };

/** `undo⏎undo`, `swap A front squat⏎undo`: steps in turn, where `undo` or `redo` is one of several lines. */
function stepsIn(text: string): readonly Step[] | undefined {
  const lines = text.split(/[\n;]/).filter((line) => line.trim() !== '');
  const steps: Step[] = [];
  for (const line of lines) {
    const word = plainAsk(line.trim());
    const last = steps.at(-1);
    if (word === 'undo' || word === 'redo') steps.push({ kind: word });
    else if (last?.kind === 'edits') steps.splice(-1, 1, { kind: 'edits', text: `${last.text}\n${line}` });
    else steps.push({ kind: 'edits', text: line });
  }
  const isStep = (step: Step) => step.kind !== 'edits' || looksLikeEdit(step.text);
  const isMixed = lines.length > 1 && steps.some(({ kind }) => kind !== 'edits');
  return isMixed && steps.every(isStep) ? steps : undefined;
}

/** Each step on what the one before it left, up to the first that can't be made; letters are those of the first version. */
async function inTurn(
  desk: Desk,
  open: OpenPlan,
  by: string,
  steps: readonly Step[],
): Promise<readonly Message[]> {
  let now = open;
  for (const step of steps) {
    const outcome = await stepOf(desk, now, by, step, open.record.currentVersion);
    if (outcome.kind === 'kept') return [outcome.message];
    now = outcome.open;
  }
  return [];
}

function stepOf(desk: Desk, now: OpenPlan, by: string, step: Step, madeOn: number): Promise<Changed> {
  switch (step.kind) {
    case 'undo':
      return undo(desk, now, by);
    case 'redo':
      return redo(desk, now, by);
    case 'edits':
      return applyEdit(desk, now, by, step.text, madeOn);
  }
}

function answerFill(desk: Desk, { version }: OpenPlan): Message {
  const open = version.plan === undefined ? [] : openLabels(version.plan);
  const { draft } = desk.words;
  return { text: open.length === 0 ? draft.noLineOpen : draft.fillByHand(open) };
}

/** Blocks without a title line go on with a draft that is being written and has not come to its end. */
function goesOn(open: OpenPlan, said: string, context: Context): boolean {
  if (!isBeingWritten(open)) return false;
  const reading = readPlan(said, context);
  const { plan } = open.version;
  if (reading.plan === undefined || !reading.notes.some(({ code }) => code === 'title-missing')) return false;
  if (plan === undefined) return true;
  const isEnded = plan.blocks.some(({ kind }) => kind === 'cool-down');
  return !isEnded && addsLines(open.version.text, said, context);
}

/** A draft still being written, as against one that is edited. */
function isBeingWritten({ record, version }: OpenPlan): boolean {
  return record.state === 'draft' && version.cause.kind === 'written';
}

const noAnswer: Said = async () => [];

function answerOf(outcome: Changed | Stepped): readonly Message[] {
  return outcome.kind === 'kept' ? [outcome.message] : [];
}
