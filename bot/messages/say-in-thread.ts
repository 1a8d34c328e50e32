import { type Limit, optionLimits } from '../../domain/plan/options-sheet.ts';
import { looksLikeClass, looksLikeEdit, nearestEdit } from '../../domain/shorthand/edit-words.ts';
import { inertText } from '../blocks/escape.ts';
import { renderFindings } from '../blocks/findings-lines.ts';
import { renderHelp, renderNearestEdit, renderThreadHelp } from '../blocks/help-message.ts';
import { inSeveral } from '../blocks/in-several.ts';
import { renderMuscles } from '../blocks/muscles-lines.ts';
import { renderTimeline } from '../blocks/timeline-lines.ts';
import { addsLines, readsAsLines, withLines } from '../flows/adds-lines.ts';
import { answerOptions, answerSwaps } from '../flows/answer-asks.ts';
import { answerLastTime } from '../flows/answer-last-time.ts';
import { applyEdit, type Changed, redo, rewrite, undo } from '../flows/change-plan.ts';
import { contextFor, type OpenPlan } from '../flows/open-plan.ts';
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
  versions: async (desk, open) => renderVersions(desk, open),
  send: async (desk, open, by) => answerOf(await sendForReview(desk, open, by)),
  withdraw: async (desk, open, by) => answerOf(await withdraw(desk, open, by)),
  approve: async (desk, open, by, rest) =>
    answerOf(await approve(desk, open, by, open.record.currentVersion, rest.replace(/^:\s*/, ''))),
  changes: async (desk, open, by, rest) =>
    answerOf(await askChanges(desk, open, by, open.record.currentVersion, rest.replace(/^:\s*/, ''))),
  help: async (desk) => [renderHelp(desk.words)],
};

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
  const ask = Object.hasOwn(threadWords, plainAsk(trimmed)) ? threadWords[plainAsk(trimmed)] : undefined;
  if (ask !== undefined) return ask(desk, open, by, '');
  const wanted = limitsIn(trimmed);
  if (wanted !== undefined) return answerOptions(desk, open, wanted);
  const [, first = '', rest = ''] = /^([\p{L}]+)[\s:]*([\s\S]*)$/u.exec(trimmed) ?? [];
  const word = first.toLowerCase();
  if (takesMore.has(word)) return (threadWords[word] ?? noAnswer)(desk, open, by, rest);
  if (looksLikeEdit(trimmed)) return editOrLines(desk, open, by, trimmed);
  const fixed = withLinePutRight(open.version.text, trimmed);
  if (fixed !== undefined) return answerOf(await rewrite(desk, open, by, fixed));
  const context = await contextFor(desk);
  if (looksLikeClass(trimmed, context)) return answerOf(await rewrite(desk, open, by, trimmed));
  const { text: draft } = open.version;
  const add = async () => answerOf(await rewrite(desk, open, by, withLines(draft, trimmed)));
  if (isBeingWritten(open) && readsAsLines(draft, trimmed, context)) return add();
  const near = nearestEdit(trimmed);
  if (near !== undefined) return [renderNearestEdit(open, near, desk.words)];
  return isBeingWritten(open) && addsLines(draft, trimmed, context) ? add() : [renderThreadHelp(desk.words)];
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
    ? answerOf(await rewrite(desk, open, by, withLines(open.version.text, text)))
    : answerOf(edited);
}

/** `line 6: goblet squat` puts that one line of the draft in its place. */
function withLinePutRight(text: string, said: string): string | undefined {
  const [, number, line] = /^line\s+(\d{1,3})\s*[:.]?\s+(.+)$/iu.exec(said) ?? [];
  const lines = text.split('\n');
  const index = Number(number) - 1;
  if (line === undefined || lines[index] === undefined) return undefined;
  return lines.map((each, place) => (place === index ? line : each)).join('\n');
}

/** A draft still being written, as against one that is edited. */
function isBeingWritten({ record, version }: OpenPlan): boolean {
  return record.state === 'draft' && version.cause.kind === 'written';
}

async function renderVersions(desk: Desk, open: OpenPlan): Promise<readonly Message[]> {
  const versions = await desk.stores.plans.listVersions(desk.studioId, open.record.id);
  const lines = versions.map((version) => inertText(desk.words.flow.versionLine(version)));
  return inSeveral('', lines, desk.words);
}

const noAnswer: Said = async () => [];

function answerOf(outcome: Changed | Stepped): readonly Message[] {
  return outcome.kind === 'kept' ? [outcome.message] : [];
}
