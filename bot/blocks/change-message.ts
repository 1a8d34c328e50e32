import { muscles } from '../../domain/catalogue/muscles.ts';
import type { Finding } from '../../domain/checks/check-plan.ts';
import type { ClassReport } from '../../domain/class-report.ts';
import type { Change } from '../../domain/shorthand/edit-plan.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { findingLine, fitButtons, mayBeSent, planValue, titleOf, titleOfReport } from './draft-card.ts';
import { type ButtonFacts, buttons, context, sections } from './elements.ts';
import { inertText } from './escape.ts';
import { inSeveral } from './in-several.ts';
import { clip, limits } from './limits.ts';
import { whatIsLeft } from './problem-blocks.ts';
import type { Show } from './show.ts';

/** What changed, and what a text written anew leaves out of the edits said before. */
export type Told = { readonly changes: readonly Change[]; readonly leftOut?: readonly LeftOutEdit[] };

/** An edit as said; `edit` makes it on the plan as it is now, where it can be made. */
export type LeftOutEdit = { readonly said: string; readonly edit?: string };

/**
 * Only what changed: lines before → after, the time, sets that moved, findings gained and cleared. In several
 * messages where one would not hold it; the last carries the buttons.
 */
export function renderChange(before: OpenPlan, after: OpenPlan, told: Told, show: Show): readonly Message[] {
  const { words } = show;
  const pages = inSeveral('', changeLines(before, after, told, show), words);
  return pages.map((page, place) =>
    place < pages.length - 1
      ? { text: page.text, blocks: sections('changed', page.text.split('\n')) }
      : withNextSteps(page.text, after, told, words),
  );
}

function withNextSteps(text: string, after: OpenPlan, { leftOut = [] }: Told, words: Words): Message {
  const { report } = after;
  const left = report.kind === 'problems' ? whatIsLeft(after, report.problems, words) : undefined;
  return {
    text: clip(
      [text, ...(left?.inShort ?? [])].filter((line) => line !== '').join('\n'),
      limits.topLevelText,
    ),
    blocks: [
      ...sections('changed', text.split('\n')),
      ...(left?.blocks ?? []),
      ...buttons('left-out', leftOutButtons(after, leftOut)),
      ...(report.kind === 'report' ? buttons('fit', fitButtons(after, report, words)) : []),
      ...buttons('next', nextSteps(after, words)),
      context(
        standingBlockId,
        `${words.card.version(after.record.currentVersion)} · ${words.state(after.record.state, after.record.approvedVersion)}`,
      ),
    ],
  };
}

/** The line that tells where the plan stood; it goes with the buttons. */
export const standingBlockId = 'standing';

/** A button carries its edit; more lines than this are no edit for a thumb. */
const mostEditLength = 1_400;

function leftOutButtons(after: OpenPlan, leftOut: readonly LeftOutEdit[]): readonly ButtonFacts[] {
  return leftOut.flatMap(({ edit }) =>
    edit === undefined || edit.length > mostEditLength
      ? []
      : [{ action: actions.applyEdit, label: edit.replaceAll('\n', ', '), value: planValue(after, edit) }],
  );
}

function nextSteps(after: OpenPlan, words: Words): readonly ButtonFacts[] {
  const { buttons: labels } = words.card;
  const value = planValue(after);
  const { cause } = after.version;
  const isFirst = cause.kind === 'undo' && cause.restores === 1;
  return [
    ...(mayBeSent(after) ? [{ action: actions.sendForReview, label: labels.send, value }] : []),
    ...(isFirst ? [] : [{ action: actions.undo, label: labels.undo, value }]),
    ...(cause.kind === 'undo' ? [{ action: actions.redo, label: labels.redo, value }] : []),
  ];
}

/**
 * Where a class stands that comes line by line: one message, kept up to date while its lines follow. What is
 * to be put right has its buttons here too.
 */
export function renderLinesSoFar(after: OpenPlan, show: Show): Message {
  const { words } = show;
  const { report } = after;
  if (report.kind === 'report') {
    const text = `*${titleOf(report.plan, words)}*: ${words.fit(report.timeline.totalSeconds, report.fit.teachingSeconds)}`;
    return withNextSteps(text, after, { changes: [] }, words);
  }
  const { lead } = whatIsLeft(after, report.problems, words);
  return withNextSteps(
    [`*${titleOfReport(report, words)}*`, ...lead].join(': '),
    after,
    { changes: [] },
    words,
  );
}

function changeLines(
  before: OpenPlan,
  after: OpenPlan,
  { changes, leftOut = [] }: Told,
  show: Show,
): readonly string[] {
  const { words } = show;
  const lines = [
    ...causeLine(after, words),
    ...changes.map((change) => inertText(words.change(change))),
    ...effectLines(before, after, show),
    ...(leftOut.length === 0
      ? []
      : [
          words.draft.leftOutOfText(
            leftOut.map(({ said }) => inertText(said.replaceAll('\n', ', '))).join(' · '),
          ),
        ]),
    ...(after.report.kind === 'problems' ? whatIsLeft(after, after.report.problems, words).lead : []),
  ];
  return lines.length === 0 ? [words.draft.nothingChanged] : lines;
}

/** What a change did: the time, the sets that moved, the findings gained and cleared. */
export function effectLines(before: OpenPlan, after: OpenPlan, show: Show): readonly string[] {
  return [
    timeLine(before, after, show.words),
    ...setsMoved(before, after, show.words),
    ...findingsMoved(before, after, show),
  ].filter((line) => line !== '');
}

function causeLine(after: OpenPlan, words: Words): readonly string[] {
  const { cause } = after.version;
  const { report } = after;
  const title = report.kind === 'report' ? titleOf(report.plan, words) : titleOfReport(report, words);
  switch (cause.kind) {
    case 'undo':
      return [words.edits.undone(cause.restores)];
    case 'redo':
      return [words.edits.redone(cause.restores)];
    case 'written':
      return [words.edits.rewritten(title)];
    case 'edit':
      return [];
  }
}

function timeLine(before: OpenPlan, after: OpenPlan, words: Words): string {
  if (after.report.kind !== 'report') return '';
  const { timeline, fit } = after.report;
  const now = words.fit(timeline.totalSeconds, fit.teachingSeconds);
  if (before.report.kind !== 'report') return `*${now}*`;
  const was = before.report.timeline.totalSeconds;
  if (was !== timeline.totalSeconds) return `*${words.length(was)} → ${now}*`;
  return before.report.fit.teachingSeconds === fit.teachingSeconds ? '' : `*${now}*`;
}

function setsMoved(before: OpenPlan, after: OpenPlan, words: Words): readonly string[] {
  if (before.report.kind !== 'report' || after.report.kind !== 'report') return [];
  const [was, now] = [before.report.load.setsByMuscle, after.report.load.setsByMuscle];
  const moved = muscles
    .map((muscle) => [muscle, words.sets(was[muscle] ?? 0), words.sets(now[muscle] ?? 0)] as const)
    .filter(([, before, after]) => before !== after)
    .map(([muscle, before, after]) => `${words.catalogue.muscle(muscle)} ${before} → ${after}`);
  return moved.length === 0 ? [] : [`${words.card.intervalSets}: ${moved.join(' · ')}`];
}

/** A finding that stays with other numbers is told as it stands now; cleared is what is gone. */
function findingsMoved(before: OpenPlan, after: OpenPlan, show: Show): readonly string[] {
  if (before.report.kind !== 'report' || after.report.kind !== 'report') return [];
  const [was, now] = [toldFindings(before.report, show), toldFindings(after.report, show)];
  const same = (one: ToldFinding) => (other: ToldFinding) =>
    one.line === other.line || isAboutTheSame(one, other);
  return [
    ...now.filter(({ line }) => !was.some((each) => each.line === line)).map(({ line }) => line),
    ...was.filter((each) => !now.some(same(each))).map(({ line }) => show.words.edits.cleared(line)),
  ];
}

type ToldFinding = Pick<Finding, 'code' | 'lines'> & { readonly line: string };

/** The same thing found of one line at least, or of the class as a whole. */
function isAboutTheSame(one: ToldFinding, other: ToldFinding): boolean {
  if (one.code !== other.code) return false;
  if (one.lines.length === 0 && other.lines.length === 0) return true;
  return one.lines.some((line) => other.lines.includes(line));
}

function toldFindings(report: ClassReport, show: Show): readonly ToldFinding[] {
  return report.findings.map((finding) => ({
    code: finding.code,
    lines: finding.lines,
    line: findingLine(finding, report.plan, show),
  }));
}
