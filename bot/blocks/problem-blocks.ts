import type { KnownBlock } from '@slack/types';
import { excerptOf } from '../../domain/shorthand/excerpt.ts';
import type { NearName, Problem } from '../../domain/shorthand/problem.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { printButtonValue } from './button-value.ts';
import { type ButtonFacts, buttons, section } from './elements.ts';
import { codeText, inertText } from './escape.ts';
import { clip } from './limits.ts';

const mostShown = 15;
/** Characters of all problems on a card, and of one. */
const mostOfAll = 8_000;
const mostOfOne = 300;

/** Every problem with its line, a caret under what could not be read, and the nearest names as buttons. */
export function problemBlocks(
  open: OpenPlan,
  problems: readonly Problem[],
  words: Words,
): readonly KnownBlock[] {
  const shown: KnownBlock[] = [];
  let used = 0;
  for (const [place, problem] of problems.entries()) {
    const text = `${inertText(clip(words.problem(problem), mostOfOne))}\n${excerptText(open.version.text, problem)}`;
    used += text.length;
    if (place === mostShown || used > mostOfAll)
      return [...shown, section('problems-left', words.card.problemsLeft(problems.length - place))];
    shown.push(
      section(`problem-${place + 1}`, text),
      ...buttons(`problem-${place + 1}-names`, nameButtons(open, problem, words)),
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
