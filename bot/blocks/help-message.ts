import type { Catalogue } from '../../domain/catalogue/catalogue.ts';
import { type LabelledLetter, labelledLetters } from '../../domain/plan/labels.ts';
import type { Plan } from '../../domain/plan/plan.ts';
import { partProblems } from '../../domain/shorthand/part-problems.ts';
import { readPlan } from '../../domain/shorthand/read-plan.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Desk, Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { planValue } from './draft-card.ts';
import { buttons, section } from './elements.ts';
import { escapeText, inertText } from './escape.ts';

/** One class to copy that works when sent back, and what comes next. */
export function renderHelp({ help }: Words): Message {
  return {
    text: `${help.lead}\n${escapeText(help.example)}\n${help.next}`,
    blocks: [
      section('help', `${help.lead}\n\`\`\`${escapeText(help.example)}\`\`\``),
      ...buttons('try', [{ action: actions.tryExample, label: help.tryButton, value: 'example' }]),
      section('next', help.next),
    ],
  };
}

/** All words that can be said, with the edits as they would work on the example. */
export function renderWholeHelp(desk: ExampleDesk): Message {
  const { help, classes } = desk.words;
  const below = [
    [help.inItsThread, help.edits(editsOfExample(desk)), ...help.asks],
    help.anywhere,
    [classes.exceptionsHelp, help.review],
  ].map((lines) => lines.join('\n'));
  return {
    text: [help.lead, escapeText(help.example), ...below].join('\n'),
    blocks: [
      section('help', `${help.lead}\n\`\`\`${escapeText(help.example)}\`\`\``),
      ...buttons('try', [{ action: actions.tryExample, label: help.tryButton, value: 'example' }]),
      ...below.map((text, place) => section(`words-${place + 1}`, text)),
    ],
  };
}

type ExampleDesk = Pick<Desk, 'words' | 'catalogue' | 'settings' | 'now'>;

const keptEdits = new WeakMap<Catalogue, readonly string[]>();

/** The example is one and the same, so it is read once a catalogue: help is asked for in a hurry. */
function editsOfExample(desk: ExampleDesk): readonly string[] {
  const kept = keptEdits.get(desk.catalogue);
  if (kept !== undefined) return kept;
  const { plan } = readPlan(desk.words.help.example, desk);
  const edits = plan === undefined ? [] : editsFor(plan);
  keptEdits.set(desk.catalogue, edits);
  return edits;
}

/** In a plan's thread: the edits, with letters of this plan, and the asks. */
export function renderThreadHelp(open: OpenPlan, { help }: Words): Message {
  const first = open.report.kind === 'problems' ? help.lines(firstUnread(open)) : help.edits(editsOf(open));
  const text = [first, ...help.asks].join('\n');
  return { text, blocks: [section('help', text)] };
}

/** The same in two lines, for words that are neither. */
export function renderUnclear(open: OpenPlan, { help }: Words): Message {
  const text =
    open.report.kind === 'problems'
      ? help.unclearAmongLines(firstUnread(open))
      : help.unclearInThread(editsOf(open).slice(0, 2));
  return { text, blocks: [section('help', text)] };
}

function firstUnread({ version, report }: OpenPlan): number | undefined {
  return report.kind === 'problems' ? partProblems(version.text, report.problems).unread[0]?.line : undefined;
}

function editsOf({ version }: OpenPlan): readonly string[] {
  return version.plan === undefined ? [] : editsFor(version.plan);
}

/** Some edits that can be made on this plan. */
function editsFor(plan: Plan): readonly string[] {
  const letters = labelledLetters(plan);
  const [first, last] = [letters[0], letters.at(-1)];
  if (first === undefined || last === undefined) return ['level 2', 'slot 50'];
  const inRounds = letters.find(({ block }) => block.kind === 'circuit' || block.kind === 'straight');
  return [
    `swap ${labelOfMove(first)} bear crawl`,
    ...(letters.length > 1 ? [`drop ${last.label}`, `move ${last.label} before ${first.label}`] : []),
    `add side plank split sides after ${(inRounds ?? first).label}`,
    ...(inRounds === undefined
      ? []
      : [`rounds ${inRounds.label} x4`, `block ${inRounds.label} 45/15`, `rest ${inRounds.label} 25`]),
    'warm-up 7:00',
    '18 now',
    'level 3',
    'title Wind Down',
  ];
}

function labelOfMove({ label, moves }: LabelledLetter): string {
  return moves[0]?.label ?? label;
}

/** Words that almost match an edit get the nearest one as a button. */
export function renderNearestEdit(open: OpenPlan, edit: string, words: Words): Message {
  const text = words.flow.nearestEdit(inertText(edit));
  return {
    text,
    blocks: [
      section('nearest', text),
      ...buttons('use', [{ action: actions.applyEdit, label: edit, value: planValue(open, edit) }]),
    ],
  };
}
