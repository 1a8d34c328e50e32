import type { KnownBlock } from '@slack/types';
import { excerptOf } from '../../domain/shorthand/excerpt.ts';
import { keepText } from '../../domain/shorthand/keep-text.ts';
import { partProblems } from '../../domain/shorthand/part-problems.ts';
import type { NearName, Problem } from '../../domain/shorthand/problem.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { printButtonValue } from './button-value.ts';
import { type ButtonFacts, buttons, context, section } from './elements.ts';
import { codeText, inertText } from './escape.ts';
import { clip, limits } from './limits.ts';

const mostShown = 15;
/** Characters of all problems on a card, and of one. */
const mostOfAll = 8_000;
const mostOfOne = 300;

/** All that is to be put right or written next: in short for a notification, with buttons, and how. */
export function whatIsLeft(
  open: OpenPlan,
  problems: readonly Problem[],
  words: Words,
): {
  readonly lead: readonly string[];
  readonly inShort: readonly string[];
  readonly blocks: readonly KnownBlock[];
  readonly how: string;
} {
  const { unread, left } = partProblems(open.version.text, problems);
  const next = left === undefined ? [] : [words.draft.leftToWrite(left)];
  return {
    lead: unread.length === 0 ? [] : [words.card.problemsTitle(unread.length)],
    inShort: [...problemsInShort(unread, words), ...next],
    blocks: [...problemBlocks(open, unread, words), ...next.map((text) => section('left', text))],
    how: howToMend(open, unread, words),
  };
}

/** Why something waits until all lines read, with what puts them right. */
export function renderLinesFirst(open: OpenPlan, words: Words): Message {
  const { report } = open;
  if (report.kind === 'report') return { text: words.flow.fixLinesFirst };
  const { lead, inShort, blocks, how } = whatIsLeft(open, report.problems, words);
  const why = lead.length === 0 ? words.draft.notWhole : words.draft.mendFirst;
  return {
    text: clip([why, ...inShort, how].join('\n'), limits.topLevelText),
    blocks: [section('why', why), ...blocks, context('how', how)],
  };
}

function howToMend({ record }: OpenPlan, unread: readonly Problem[], words: Words): string {
  const [first] = unread;
  if (first === undefined) return words.draft.linesWelcome;
  const names = unread.some((problem) => nearNamesOf(problem).length > 0);
  return words.draft.mendHow({ names, line: first.line, ownMessage: record.home !== undefined });
}

/**
 * Every problem with its line, a caret under what could not be read, and what puts it right as buttons: the
 * nearest names, and the line left out.
 */
function problemBlocks(open: OpenPlan, problems: readonly Problem[], words: Words): readonly KnownBlock[] {
  const shown: KnownBlock[] = [];
  let used = 0;
  for (const [place, problem] of problems.entries()) {
    const text = `${inertText(clip(words.problem(problem), mostOfOne))}\n${excerptText(open.version.text, problem)}`;
    used += text.length;
    if (place === mostShown || used > mostOfAll)
      return [...shown, section('problems-left', words.card.problemsLeft(problems.length - place))];
    shown.push(
      section(`problem-${place + 1}`, text),
      ...buttons(`problem-${place + 1}-names`, [
        ...nameButtons(open, problem, words),
        ...(problems[place + 1]?.line === problem.line ? [] : leaveOut(open, problem, words)),
      ]),
    );
  }
  return shown;
}

/** One line a problem, for the notification and the screen reader. */
export function problemsInShort(problems: readonly Problem[], words: Words): readonly string[] {
  const told = problems
    .slice(0, mostShown)
    .map((problem) => inertText(clip(words.problem(problem), mostOfOne)));
  const left = problems.length - told.length;
  return left > 0 ? [...told, words.card.problemsLeft(left)] : told;
}

function excerptText(text: string, problem: Problem): string {
  const { lineText, caretStart, caretLength } = excerptOf(text, problem.span);
  const line = lineText.replaceAll('`', "'");
  return `\`\`\`${codeText(line)}\n${' '.repeat(caretStart)}${'^'.repeat(Math.max(1, caretLength))}\`\`\``;
}

/** The nearest names, and for a move nobody knows: its words kept, with its time and no load. */
function nameButtons(open: OpenPlan, problem: Problem, words: Words): readonly ButtonFacts[] {
  const put = (label: string, name: string): ButtonFacts => ({
    action: actions.chooseMove,
    label,
    value: printButtonValue({
      plan: open.record.id,
      version: open.record.currentVersion,
      at: [problem.span.start, problem.span.end],
      name,
    }),
  });
  const names = nearNamesOf(problem).map(({ name }) => put(words.card.buttons.useName(name), name));
  const asWords =
    problem.code === 'unknown-move' && problem.read.length <= 100 && !problem.read.includes('"');
  if (!asWords) return names;
  const ours: ButtonFacts = { ...put(words.ownMove.addButton, problem.read), action: actions.openOwnMove };
  return [...names, ours, put(words.card.buttons.keepAsWords, `"${problem.read}"`)];
}

/** The whole line out of the text; nothing of a draft of one line, or of a message that is too long. */
function leaveOut(open: OpenPlan, { line, code }: Problem, words: Words): readonly ButtonFacts[] {
  const lines = keepText(open.version.text).split('\n');
  const said = lines[line - 1];
  if (said === undefined || lines.length === 1 || code === 'message-too-long') return [];
  const start = lines.slice(0, line - 1).join('\n').length;
  const end = line === 1 ? said.length + 1 : start + 1 + said.length;
  return [
    {
      action: actions.chooseMove,
      label: words.draft.leaveOut(line),
      value: printButtonValue({
        plan: open.record.id,
        version: open.record.currentVersion,
        at: [start, end],
        name: '',
      }),
    },
  ];
}

function nearNamesOf(problem: Problem): readonly NearName[] {
  switch (problem.code) {
    case 'unknown-move':
      return problem.near;
    case 'ambiguous-move':
      return problem.choices;
    default:
      return [];
  }
}
