import type { KnownBlock } from '@slack/types';
import type { MoveId } from '../../domain/catalogue/move.ts';
import { hasLetters } from '../../domain/plan/blocks-of.ts';
import type { Plan } from '../../domain/plan/plan.ts';
import type { LifeStep } from '../../domain/plan/plan-life.ts';
import { changesBetween } from '../../domain/shorthand/changes-between.ts';
import { printBlockLine } from '../../domain/shorthand/print-plan.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import { effectLines } from './change-message.ts';
import { findingLine, planValue, type Show, titleOf } from './draft-card.ts';
import { buttons, context, section, sections } from './elements.ts';
import { escapeText, inertText } from './escape.ts';
import { inSeveral } from './in-several.ts';
import { clip, limits } from './limits.ts';

/** Characters of one line, and of what changed; the rest stands with the timeline and the checks. */
const mostOfLine = 700;
const mostOfChanges = 4_000;
const mostFindings = 5;

/**
 * A plan in the order a coach reads: who, when, level, aim; shape; fit; what must be fixed; what is technical;
 * what changed since the last approval; patterns. Buttons stand only while the plan waits for a decision.
 */
export function renderReview(
  open: OpenPlan,
  steps: readonly LifeStep[],
  approved: OpenPlan | undefined,
  show: Show,
): Message {
  const { words } = show;
  const { report, record } = open;
  if (report.kind !== 'report') return { text: words.card.problemsTitle(report.problems.length) };
  const { plan, timeline, fit, load } = report;
  const title = titleOf(plan, words);
  const lead = words.review.lead(title, record.authorId, record.currentVersion);
  const when = open.scheduled === undefined ? words.card.notOnCalendar : words.when(open.scheduled.startsAt);
  const facts = [
    when,
    plan.facts.level === undefined ? '' : words.level(plan.facts.level),
    plan.facts.people === undefined ? '' : words.people(plan.facts.people),
    plan.facts.aim === undefined ? '' : `aim ${clip(inertText(plan.facts.aim), mostOfLine)}`,
  ].filter((part) => part !== '');
  const fitLine = words.fit(timeline.totalSeconds, fit.teachingSeconds);
  const mustFix = report.findings.filter(({ severity }) => severity === 'must fix');
  const lookAt = report.findings.filter(({ severity }) => severity === 'look at').slice(0, 3);
  const changed =
    approved === undefined
      ? []
      : [
          `*${words.review.changedSince}*`,
          ...firstOf(differenceLines(approved, open, show), mostOfChanges, words.review.moreChanges),
        ];
  const technical = technicalMoves(plan, show);
  const last = steps.at(-1);
  const decided =
    last === undefined || record.state === 'in review'
      ? ''
      : words.review.decided(last.kind, last.by, last.version, reasonOf(last));
  const lines = [
    `*${lead}*`,
    facts.join(' · '),
    ...(changed.length > 0 ? changed : [clip(shapeLine(plan), mostOfLine), `*${fitLine}*`]),
    ...[...mustFix, ...lookAt]
      .slice(0, mostFindings)
      .map((finding) => clip(findingLine(finding, plan, show), mostOfLine))
      .filter((line) => !changed.includes(line)),
    technical === '' ? '' : clip(words.review.technical(technical), mostOfLine),
    changed.length > 0 ? '' : `*${words.card.patterns}*  ${words.patternSets(load.setsByPattern)}`,
  ].filter((line) => line !== '');
  const value = planValue(open);
  const blocks: readonly KnownBlock[] = [
    ...sections('plan', lines),
    ...(decided === '' ? [] : [section('decided', `*${decided}*`)]),
    ...buttons('decide', [
      ...(record.state === 'in review'
        ? [
            {
              action: actions.approve,
              label: words.review.approveButton(record.currentVersion),
              value,
              style: 'primary' as const,
            },
            { action: actions.openAskChanges, label: words.review.askButton, value },
          ]
        : []),
      { action: actions.timeline, label: words.card.buttons.timeline, value },
      { action: actions.muscles, label: words.card.buttons.muscles, value },
    ]),
    context('standing', `_${words.standingLine}_`),
  ];
  const text = [
    decided === '' ? lead : decided,
    ...facts,
    fitLine,
    ...mustFix.map((finding) => findingLine(finding, plan, show)),
  ].join('\n');
  return { text: clip(text, limits.topLevelText), blocks };
}

/** Just what changed, for the thread under the review; in several messages where one would not hold it. */
export function renderDifference(before: OpenPlan, after: OpenPlan, show: Show): readonly Message[] {
  const lead = show.words.review.nowAt(after.record.currentVersion);
  return inSeveral(lead, differenceLines(before, after, show), show.words);
}

/** Lines up to a number of characters, then how many are left. */
function firstOf(lines: readonly string[], most: number, left: (count: number) => string): readonly string[] {
  let used = 0;
  const fits = lines.findIndex((line) => {
    used += line.length + 1;
    return used > most;
  });
  return fits === -1 ? lines : [...lines.slice(0, fits), left(lines.length - fits)];
}

function differenceLines(before: OpenPlan, after: OpenPlan, show: Show): readonly string[] {
  const [was, now] = [before.version.plan, after.version.plan];
  const lines = was === undefined || now === undefined ? [] : changesBetween(was, now, show.catalogue);
  return [
    ...lines.map((change) => inertText(show.words.change(change))),
    ...effectLines(before, after, show),
  ];
}

function shapeLine(plan: Plan): string {
  return plan.blocks
    .filter((block) => hasLetters(block))
    .map((block) => inertText(printBlockLine(block)))
    .join(' → ');
}

function technicalMoves(plan: Plan, show: Show): string {
  const ids: readonly MoveId[] = plan.blocks
    .filter(hasLetters)
    .flatMap((block) => block.letters)
    .flatMap((letter) => letter.moves)
    .flatMap(({ choice }) => (choice.kind === 'move' ? [choice.moveId] : []));
  const names = [...new Set(ids)].flatMap((id) => {
    const move = show.catalogue.byId.get(id);
    return move?.traits.includes('technical') === true ? [move.name] : [];
  });
  return names.join(', ');
}

function reasonOf(step: LifeStep): string {
  return step.reason === undefined ? '' : escapeText(step.reason);
}
