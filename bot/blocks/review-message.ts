import type { KnownBlock } from '@slack/types';
import type { MoveId } from '../../domain/catalogue/move.ts';
import type { ClassReport } from '../../domain/class-report.ts';
import { hasLetters } from '../../domain/plan/blocks-of.ts';
import type { Plan } from '../../domain/plan/plan.ts';
import type { LifeStep, PlanRecord } from '../../domain/plan/plan-life.ts';
import { changesBetween } from '../../domain/shorthand/changes-between.ts';
import { printBlockLine } from '../../domain/shorthand/print-plan.ts';
import type { AskedOn } from '../flows/asked-on.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { ReviewFacts } from '../flows/review-facts.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { effectLines } from './change-message.ts';
import { commentLines } from './comment-messages.ts';
import { findingLine, planValue, titleOf } from './draft-card.ts';
import { type ButtonFacts, buttons, context, sections } from './elements.ts';
import { inertText } from './escape.ts';
import { inSeveral } from './in-several.ts';
import { clip, firstLines, limits } from './limits.ts';
import type { Show } from './show.ts';

/** Characters of one line, and of what changed; the rest stands with the timeline and the checks. */
const mostOfLine = 500;
const mostOfChanges = 3_000;
const mostOfComments = 1_500;
/** Findings beside those that must be fixed, and of all of them. */
const mostFindings = 4;
const mostMustFix = 8;

/**
 * A plan in the order a coach reads: who, when, level, aim; shape; fit; what must be fixed; what is technical;
 * what changed since the last approval; patterns. Buttons stand only while the plan waits for a decision.
 */
export function renderReview(
  open: OpenPlan,
  steps: readonly LifeStep[],
  approved: OpenPlan | undefined,
  known: ReviewFacts & AskedOn,
  show: Show,
): Message {
  const { words } = show;
  const { report, record } = open;
  if (report.kind !== 'report') return { text: words.card.problemsTitle(report.problems.length) };
  const { plan, timeline, fit } = report;
  const lead = words.review.lead(titleOf(plan, words), record.authorId, record.currentVersion);
  const facts = factsOf(open, report, known, words);
  const fitLine = fitOf(report, words);
  const { changedSince } = words.review;
  const sameTime = `*${words.fit(timeline.totalSeconds, fit.teachingSeconds)}*`;
  const changed = approved === undefined ? [] : changedLines(changedSince, approved, open, show);
  const findings = report.findings
    .filter(({ severity }) => severity !== 'good to know')
    .map((finding) => clip(findingLine(finding, plan, show), mostOfLine));
  const mustFix = report.findings.filter(({ severity }) => severity === 'must fix').length;
  const decided = decidedOf(record, steps, words);
  const comments = commentLines(known.comments, plan, show);
  const lines = [
    `*${lead}*`,
    facts.join(' · '),
    ...known.clashes.map((line) => clip(line, mostOfLine)),
    ...(changed.length > 0 ? [] : [clip(shapeLine(plan), mostOfLine), `*${fitLine}*`]),
    ...findings
      .slice(0, Math.max(mustFix, mostFindings))
      .slice(0, mostMustFix)
      .filter((line) => !changed.includes(line)),
    ...technicalAndNew(plan, known, show),
    ...changed,
    ...answeredLines(known, open, show).filter((line) => !findings.includes(line) && line !== sameTime),
    changed.length > 0 ? '' : clip(patternsLine(report, known, words), mostOfLine),
    ...(comments.length === 0
      ? []
      : [`*${words.coach.openComments}*`, ...firstLines(comments, mostOfComments, words.review.moreChanges)]),
  ].filter((line) => line !== '');
  const blocks: readonly KnownBlock[] = [
    ...sections('plan', lines),
    ...(decided === '' ? [] : sections('decided', decided.split('\n'))),
    ...buttons('decide', reviewButtons(open, words)),
    context('standing', `_${words.standingLine}_`),
  ];
  const text = [
    decided === '' ? lead : decided,
    ...facts,
    ...known.clashes,
    words.fit(timeline.totalSeconds, fit.teachingSeconds),
    ...findings.slice(0, mustFix),
  ].join('\n');
  return { text: clip(text, limits.topLevelText), blocks };
}

/** When, level, people, aim; new, taught before, or cover. */
function factsOf(open: OpenPlan, { plan }: ClassReport, known: ReviewFacts, words: Words): readonly string[] {
  const { level, people, aim } = plan.facts;
  const { coach } = words;
  return [
    open.scheduled === undefined ? words.card.notOnCalendar : words.when(open.scheduled.startsAt),
    level === undefined ? '' : words.level(level),
    people === undefined ? '' : words.people(people),
    aim === undefined ? '' : words.card.aim(clip(inertText(aim), mostOfLine)),
    known.lastTaught === undefined ? coach.isNew : coach.repeats(words.when(known.lastTaught)),
    known.coveredBy === undefined ? '' : coach.covers(known.coveredBy),
  ].filter((part) => part !== '');
}

function fitOf({ timeline, fit }: ClassReport, words: Words): string {
  const explaining = timeline.segments
    .filter(({ kind, also }) => kind === 'explain' || also === 'explain')
    .reduce((sum, { startSeconds, endSeconds }) => sum + endSeconds - startSeconds, 0);
  const line = words.fit(timeline.totalSeconds, fit.teachingSeconds);
  return explaining === 0 ? line : `${line}, ${words.coach.explaining(words.length(explaining))}`;
}

function changedLines(lead: string, before: OpenPlan, open: OpenPlan, show: Show): readonly string[] {
  const { moreChanges } = show.words.review;
  return [`*${lead}*`, ...firstLines(differenceLines(before, open, show), mostOfChanges, moreChanges)];
}

/** What became of the changes a coach asked for, beside the whole plan. */
function answeredLines({ askedOn }: AskedOn, open: OpenPlan, show: Show): readonly string[] {
  if (askedOn === undefined) return [];
  const lead = show.words.review.changedSinceAsked(askedOn.version.version);
  return changedLines(lead, askedOn, open, show);
}

function technicalAndNew(plan: Plan, known: ReviewFacts, show: Show): readonly string[] {
  const technical = technicalMoves(plan, show);
  const fresh = known.newMoves.map((id) => show.catalogue.byId.get(id)?.name ?? id).join(', ');
  return [
    technical === '' ? '' : clip(show.words.review.technical(technical), mostOfLine),
    fresh === '' ? '' : clip(show.words.coach.newMoves(fresh), mostOfLine),
  ];
}

/** Each pattern of the class beside what the whole week has of it. */
function patternsLine({ load }: ClassReport, known: ReviewFacts, words: Words): string {
  const parts = Object.entries(load.setsByPattern)
    .filter(([, sets]) => sets > 0)
    .toSorted((a, b) => b[1] - a[1])
    .map(([pattern, sets]) =>
      words.coach.patternInWeek(pattern, words.sets(sets), words.sets(known.weekPatterns[pattern] ?? sets)),
    );
  return parts.length === 0 ? '' : `*${words.card.patterns}*  ${parts.join(' · ')}`;
}

function decidedOf({ state }: PlanRecord, steps: readonly LifeStep[], words: Words): string {
  const last = steps.at(-1);
  return last === undefined || state === 'in review'
    ? ''
    : words.review
        .decided(last.kind, last.by, last.version, reasonOf(last))
        .split('\n')
        .map((line) => (line === '' ? '' : `*${line}*`))
        .join('\n');
}

function reviewButtons(open: OpenPlan, words: Words): readonly ButtonFacts[] {
  const value = planValue(open);
  const { state, currentVersion } = open.record;
  return [
    ...(state === 'in review'
      ? [
          {
            action: actions.approve,
            label: words.review.approveButton(currentVersion),
            value,
            style: 'primary' as const,
          },
          { action: actions.openApproveWithNote, label: words.coach.noteButton, value },
          { action: actions.openAskChanges, label: words.review.askButton, value },
          { action: actions.openComment, label: words.coach.commentButton, value },
        ]
      : []),
    { action: actions.timeline, label: words.card.buttons.timeline, value },
    { action: actions.allFindings, label: words.card.buttons.findings, value },
    { action: actions.muscles, label: words.card.buttons.muscles, value },
  ];
}

/** Just what changed, for the thread under the review; in several messages where one would not hold it. */
export function renderDifference(before: OpenPlan, after: OpenPlan, show: Show): readonly Message[] {
  const lead = show.words.review.nowAt(after.record.currentVersion);
  return inSeveral(lead, differenceLines(before, after, show), show.words);
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
  return step.reason === undefined ? '' : inertText(step.reason);
}
