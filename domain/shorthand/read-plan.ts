import type { Context } from '../context.ts';
import type { Plan, PlanFacts } from '../plan/plan.ts';
import { blockWordAt } from './blocks/block-words.ts';
import { readBlockLine } from './blocks/read-block-line.ts';
import { checkLength } from './check-length.ts';
import { checkOrder, sayRests } from './check-order.ts';
import { groupLines, type Section, spanOfLine } from './group-lines.ts';
import { keepIds } from './keep-ids.ts';
import { keepText } from './keep-text.ts';
import { limits } from './limits.ts';
import { type Line, linesOf } from './lines-of.ts';
import { type NameBook, nameBook } from './moves/name-book.ts';
import type { Note } from './note.ts';
import type { Problem } from './problem.ts';
import { isKitLine } from './read-kit-line.ts';
import { readSection, sayTooFewBouts } from './read-section.ts';
import { isFactsLine, readTitleLine, type TitleFacts } from './title/read-title-line.ts';
import { tokensOf } from './tokens-of.ts';
import { nothingTold, type Told, tellNote, tellProblem } from './told.ts';

/**
 * What a draft says. `plan` is what could be read; absent where no block could, and then `facts` are what its
 * first line says. Spans count in `keepText(text)`.
 */
export type PlanReading = {
  readonly plan?: Plan;
  readonly facts?: PlanFacts;
  readonly notes: readonly Note[];
  readonly problems: readonly Problem[];
};

/** What a reader must know; a `previousPlan` lends its line ids to lines that stand again. */
export type ReadingContext = Pick<Context, 'catalogue' | 'settings' | 'now' | 'previousPlan'>;

/** A whole class from its shorthand. Reads every line, tells all problems and notes, never throws. */
export function readPlan(text: string, context: ReadingContext): PlanReading {
  const kept = keepText(text);
  const told = nothingTold(kept);
  if (kept.length > limits.messageLength) {
    const problem = { code: 'message-too-long', length: kept.length, most: limits.messageLength } as const;
    tellProblem(told, 1, { start: 0, end: 1 }, problem);
    return { notes: [], problems: told.problems };
  }
  const { title, below } = partTitleLine(linesOf(kept), told, context);
  const { sections, kit } = groupLines(below, told);
  const facts = factsOf(title, kit, told, context);
  const book = nameBook(context);
  const blocks = blocksOf(sections, told, book);
  if (sections.length === 0)
    tellProblem(told, 1, { start: 0, end: Math.min(kept.length, 1) }, { code: 'no-block' });
  if (blocks.length > 0) checkLength({ facts, blocks }, told, { ...context, catalogue: book.catalogue });
  const problems = told.problems.toSorted((a, b) => a.span.start - b.span.start);
  const notes = told.notes;
  if (blocks.length === 0) return { facts, notes, problems };
  return { plan: keepIds({ facts, blocks }, context.previousPlan), notes, problems };
}

type Parted = { readonly title?: TitleFacts; readonly below: readonly Line[] };

/** The first line is the title unless it is the kit or reads whole as a block line. */
function partTitleLine(lines: readonly Line[], told: Told, context: ReadingContext): Parted {
  const [first, ...others] = lines;
  if (first === undefined) return { below: [] };
  if (isKitLine(first) || readsAsBlock(first, told, context)) {
    tellNote(told, { code: 'title-missing' });
    return { below: lines };
  }
  const talk = talkAbove(lines, told, context);
  for (const line of lines.slice(0, talk))
    tellNote(told, { code: 'line-left-out', line: line.number, text: line.text.trim() }, spanOfLine(line));
  const [title, ...below] = talk === 0 ? [first, ...others] : lines.slice(talk);
  return title === undefined
    ? { below }
    : factsBelow(below, readTitleLine(title, told, context), told, context);
}

/** How many lines of talk stand above the title line: the one with a title and a length, where the first has no length. */
function talkAbove(lines: readonly Line[], told: Told, context: ReadingContext): number {
  const head = lines.findIndex((line, at) => at > 0 && beginsTheRest(line, told));
  const read = lines
    .slice(0, head === -1 ? lines.length : head)
    .map((line) => readTitleLine(line, nothingTold(told.text), context));
  if (read[0]?.slotSeconds !== undefined) return 0;
  return Math.max(
    0,
    read.findIndex(({ title, slotSeconds }) => title !== undefined && slotSeconds !== undefined),
  );
}

/** Facts of the class go on below the title up to the first line that says anything else. */
function factsBelow(lines: readonly Line[], title: TitleFacts, told: Told, context: ReadingContext): Parted {
  const [next, ...others] = lines;
  if (next === undefined || beginsTheRest(next, told)) return { title, below: lines };
  if (!isFactsLine(next, told, context)) return { title, below: lines };
  return factsBelow(others, readTitleLine(next, told, context, title), told, context);
}

function beginsTheRest(line: Line, told: Told): boolean {
  return isKitLine(line) || readBlockLine(line, nothingTold(told.text)) !== undefined;
}

function readsAsBlock(line: Line, told: Told, context: ReadingContext): boolean {
  const trial = nothingTold(told.text);
  const head = readBlockLine(line, trial);
  const isWordFirst = blockWordAt(tokensOf(line)) !== undefined;
  if (!isWordFirst && head?.kind !== 'warm-up') return false;
  if (head === undefined || trial.problems.length > 0) return false;
  if (head.shape !== 'open') return true;
  const facts = readTitleLine(line, nothingTold(told.text), context);
  return facts.level === undefined && facts.people === undefined && facts.room === undefined;
}

function factsOf(
  title: TitleFacts | undefined,
  kit: PlanFacts['kit'],
  told: Told,
  { settings }: ReadingContext,
): PlanFacts {
  const slotSeconds = settings.defaultSlotSeconds;
  if (title?.slotSeconds === undefined) tellNote(told, { code: 'slot-assumed', slotSeconds });
  return {
    slotSeconds,
    beginners: false,
    olderAdults: false,
    hotRoom: false,
    ...title,
    ...(kit && { kit }),
  };
}

function blocksOf(sections: readonly Section[], told: Told, book: NameBook): Plan['blocks'] {
  const read = sections.map((section) => ({
    line: section.line.number,
    ...readSection(section, book, told),
  }));
  const placed = read.flatMap(({ block, line }) => (block === undefined ? [] : [{ block, line }]));
  const blocks = checkOrder(placed, told);
  sayRests(blocks, told);
  for (const block of blocks) sayTooFewBouts(block, told);
  const words = [...new Set(read.flatMap(({ keptWords }) => keptWords))];
  if (words.length > 0) tellNote(told, { code: 'words-kept', words });
  return blocks;
}
