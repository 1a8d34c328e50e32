import { muscles } from '../../domain/catalogue/muscles.ts';
import type { ClassReport } from '../../domain/class-report.ts';
import type { Change } from '../../domain/shorthand/edit-plan.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { findingLine, fitButtons, planValue, type Show, titleOf } from './draft-card.ts';
import { buttons, context, sections } from './elements.ts';
import { inertText } from './escape.ts';
import { inSeveral } from './in-several.ts';
import { problemsInShort } from './problem-blocks.ts';

/**
 * Only what changed: lines before → after, the time, sets that moved, findings gained and cleared. In several
 * messages where one would not hold it; the last carries the buttons.
 */
export function renderChange(
  before: OpenPlan,
  after: OpenPlan,
  changes: readonly Change[],
  show: Show,
): readonly Message[] {
  const { words } = show;
  const { buttons: labels } = words.card;
  const value = planValue(after);
  const pages = inSeveral('', changeLines(before, after, changes, show), words);
  return pages.map(({ text }, place) => ({
    text,
    blocks: [
      ...sections('changed', text.split('\n')),
      ...(place < pages.length - 1
        ? []
        : [
            ...(after.report.kind === 'report' ? buttons('fit', fitButtons(after, after.report, words)) : []),
            ...buttons('next', [
              ...(after.record.state === 'draft' && after.report.kind === 'report'
                ? [{ action: actions.sendForReview, label: labels.send, value }]
                : []),
              { action: actions.undo, label: labels.undo, value },
            ]),
            context(
              'standing',
              `${words.card.version(after.record.currentVersion)} · ${words.state(after.record.state, after.record.approvedVersion)}`,
            ),
          ]),
    ],
  }));
}

function changeLines(
  before: OpenPlan,
  after: OpenPlan,
  changes: readonly Change[],
  show: Show,
): readonly string[] {
  const { words } = show;
  return [
    ...causeLine(after, words),
    ...changes.map((change) => inertText(words.change(change))),
    ...effectLines(before, after, show),
    ...(after.report.kind === 'problems' ? problemsInShort(after.report.problems, words) : []),
  ];
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
  const title = titleOf(after.version.plan, words);
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
  const was = before.report.kind === 'report' ? before.report.timeline.totalSeconds : undefined;
  return was === undefined || was === timeline.totalSeconds ? `*${now}*` : `*${words.length(was)} → ${now}*`;
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
    one.line === other.line || one.subject === other.subject;
  return [
    ...now.filter(({ line }) => !was.some((each) => each.line === line)).map(({ line }) => line),
    ...was.filter((each) => !now.some(same(each))).map(({ line }) => show.words.edits.cleared(line)),
  ];
}

type ToldFinding = { readonly subject: string; readonly line: string };

function toldFindings(report: ClassReport, show: Show): readonly ToldFinding[] {
  return report.findings.map((finding) => ({
    subject: [finding.code, ...finding.lines].join(' '),
    line: findingLine(finding, report.plan, show),
  }));
}
