import type { KnownBlock } from '@slack/types';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Finding } from '../../domain/checks/check-plan.ts';
import type { ClassProblems, ClassReport } from '../../domain/class-report.ts';
import type { Load } from '../../domain/load/load.ts';
import { hasLetters, isOpenBlock } from '../../domain/plan/blocks-of.ts';
import { type LabelledLetter, labelledLetters, labelsByLine } from '../../domain/plan/labels.ts';
import { openLabels } from '../../domain/plan/open-labels.ts';
import type { Block, Plan } from '../../domain/plan/plan.ts';
import { printSlot } from '../../domain/shorthand/print-facts.ts';
import { printItems } from '../../domain/shorthand/print-letter.ts';
import { printBlockLine, printMoveLine } from '../../domain/shorthand/print-plan.ts';
import type { BlockTime, Timeline } from '../../domain/timing/timeline.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { printButtonValue } from './button-value.ts';
import { cautionLines } from './caution-lines.ts';
import { type ButtonFacts, buttons, context, section, sections } from './elements.ts';
import { inertText } from './escape.ts';
import { inSeveral } from './in-several.ts';
import { clip, limits } from './limits.ts';
import { whatIsLeft } from './problem-blocks.ts';
import type { Show } from './show.ts';

/** The card that stands in a draft's thread: shape, findings, what was assumed and what to do next before what can be read after. */
export function renderDraftCard(open: OpenPlan, show: Show): Message {
  const { report } = open;
  return report.kind === 'report' ? renderReport(open, report, show) : renderProblems(open, report, show);
}

/** The title as people see it, a very long one shortened; a class without one is called so. */
export function titleOf(plan: Pick<Plan, 'facts'> | undefined, words: Words): string {
  return inShortText(plan?.facts.title ?? words.card.untitled);
}

/** The title of what could be read, if only its first line. */
export function titleOfReport({ plan, facts }: ClassProblems, words: Words): string {
  return titleOf(plan ?? (facts && { facts }), words);
}

/** What of a title, focus or aim stands on a card. */
const mostOfFact = 150;

function inShortText(text: string): string {
  return inertText(clip(text, mostOfFact));
}

/** Each block with its own time, its letters and moves; short letters share a line. */
function blockLines(plan: Plan, timeline: Timeline, show: Show): readonly string[] {
  const letters = labelledLetters(plan);
  return plan.blocks.flatMap((block, place) => {
    const time = timeline.blocks[place];
    if (time === undefined) return [];
    const below = letters.filter((each) => each.block === block);
    return [
      headLine(block, time, show),
      ...itemsLine(block, show),
      ...letterLines(below, show),
      ...roundLine(block, below, show),
    ];
  });
}

function headLine(
  block: Block,
  { startSeconds, endSeconds, workSeconds }: BlockTime,
  { words }: Show,
): string {
  const seconds = endSeconds - startSeconds;
  const ratio =
    hasLetters(block) && seconds > 0 ? ` · ${words.workToRest(workSeconds, seconds - workSeconds)}` : '';
  return `*${words.length(seconds)}*  *${inertText(printBlockLine(block))}*${ratio}`;
}

function itemsLine(block: Block, { catalogue }: Show): readonly string[] {
  return isOpenBlock(block) && block.items.length > 0 ? [inertText(printItems(block.items, catalogue))] : [];
}

/** Characters of the card's parts, which together stay within one message. */
const mostOfBlocks = 4_500;
const mostOfFinding = 600;
const mostOfContext = 1_000;

/** About as many characters as a phone shows in a line. */
const phoneLine = 44;

function letterLines(letters: readonly LabelledLetter[], { catalogue }: Show): readonly string[] {
  const lines: { readonly text: string; readonly width: number }[] = [];
  for (const { label, letter } of letters) {
    const moves = printMoveLine(letter, catalogue);
    const width = label.length + 1 + moves.length;
    const text = `*${label}* ${inertText(moves)}`;
    const last = lines.at(-1);
    if (last !== undefined && last.width + 3 + width <= phoneLine) {
      lines[lines.length - 1] = { text: `${last.text} · ${text}`, width: last.width + 3 + width };
    } else lines.push({ text, width });
  }
  return lines.map(({ text }) => text);
}

function roundLine(block: Block, letters: readonly LabelledLetter[], { words }: Show): readonly string[] {
  const inTurn =
    hasLetters(block) && (block.kind === 'circuit' || block.kind === 'stations' || block.kind === 'finisher');
  return inTurn && letters.length > 1 ? [words.card.eachRound(letters.map(({ label }) => label))] : [];
}

function renderReport(open: OpenPlan, report: ClassReport, show: Show): Message {
  const { words } = show;
  const { plan, timeline, load, fit } = report;
  const fitLine = words.fit(timeline.totalSeconds, fit.teachingSeconds);
  const title = titleOf(plan, words);
  const facts = factsLine(plan, open.scheduled, words);
  const told = report.findings
    .slice(0, 3)
    .map((finding) => clip(findingLine(finding, plan, show), mostOfFinding));
  const { shown, left } = partedLines(blockLines(plan, timeline, show));
  const more = report.findings.length - told.length;
  const openLines = openLabels(plan);
  const found = [
    ...(openLines.length === 0 ? [] : [words.draft.openLines(openLines.length)]),
    ...told,
    ...(more > 0 ? [words.card.moreFindings(more)] : []),
  ];
  const blocks: readonly KnownBlock[] = [
    section('title', [`*${title}*`, facts, `*${fitLine}*`].filter((line) => line !== '').join('\n')),
    ...sections('blocks', left.length === 0 ? shown : [...shown, `_${words.card.goesOn}_`]),
    ...sections('findings', found.length === 0 ? [words.card.noFindings] : found),
    ...contextLines('notes', report.notes.map(words.note).map(inertText)),
    ...buttons('fit', fitButtons(open, report, words)),
    ...buttons('next', nextSteps(open, words)),
    section(
      'totals',
      [
        words.totals(timeline),
        labelled(words.card.patterns, words.patternSets(load.setsByPattern)),
        labelled(words.card.intervalSets, words.muscleSets(load.setsByMuscle, 8)),
        load.conditioningSeconds > 0 ? words.card.conditioning(load.conditioningSeconds) : '',
        energyText(load, words),
        factorText(show),
      ]
        .filter((line) => line !== '')
        .join('\n'),
    ),
    ...buttons('look', lookAt(open, words)),
    ...contextLines('cautions', [cautionLines(plan, show).join(' · ')]),
    context('standing', `${standingOf(open, words)}\n_${words.standingLine}_`),
  ];
  const text = [
    `${title}: ${fitLine}.`,
    inShort(plan, timeline, show),
    found.length === 0 ? words.card.noFindings : found.join(' '),
    ...(openLines.length === 0 ? [words.card.nextInShort(open.record.state)] : []),
  ].join('\n');
  return { text: clip(text, limits.topLevelText), blocks };
}

export function energyText({ energy }: Load, words: Words): string {
  return energy === undefined
    ? ''
    : words.card.energy(Math.round(energy.lightKcal), Math.round(energy.heavyKcal));
}

/** Said only where the studio's change-overs are not the standard ones. */
function factorText({ settings, words }: Show): string {
  if (settings === undefined || settings.transitions.factor === 1) return '';
  return words.card.factor(settings.transitions.factor, settings.factorMove);
}

function renderProblems(open: OpenPlan, report: ClassProblems, show: Show): Message {
  const { words } = show;
  const title = titleOfReport(report, words);
  const { lead, inShort, blocks, how } = whatIsLeft(open, report.problems, words);
  return {
    text: clip(
      [[`${title}:`, ...lead].join(' '), factsRead(report, words), ...inShort, how]
        .filter((line) => line !== '')
        .join('\n'),
      limits.topLevelText,
    ),
    blocks: [
      section(
        'title',
        [`*${title}*`, factsRead(report, words), ...lead].filter((line) => line !== '').join('\n'),
      ),
      ...blocks,
      ...contextLines('notes', report.notes.map(words.note).map(inertText)),
      context('standing', how),
    ],
  };
}

/** What was read of the first line, where nothing stands below it yet. */
function factsRead({ plan, facts }: ClassProblems, words: Words): string {
  if (plan !== undefined || facts === undefined) return '';
  const { startsAt, slotSeconds } = facts;
  return [
    inertText(printSlot(slotSeconds)),
    factsLine({ facts, blocks: [] }, undefined, words),
    startsAt === undefined ? '' : words.when(startsAt),
  ]
    .filter((part) => part !== '')
    .join(' · ');
}

/** What the title line says, and where its class has other numbers those of the class. */
function factsLine(plan: Plan, scheduled: ScheduledClass | undefined, words: Words): string {
  const { level, people, aim, focus, beginners, olderAdults, hotRoom, room } = plan.facts;
  return [
    level === undefined ? '' : words.level(level),
    people === undefined ? '' : words.people(people),
    beginners ? words.card.beginners : '',
    olderAdults ? words.card.olderAdults : '',
    hotRoom ? words.card.hotRoom : '',
    focus === undefined ? '' : words.card.focus(inShortText(focus)),
    aim === undefined ? '' : words.card.aim(inShortText(aim)),
    room === undefined ? '' : inShortText(room),
    otherInClass(plan, scheduled, words),
  ]
    .filter((part) => part !== '')
    .join(' · ');
}

function otherInClass({ facts }: Plan, scheduled: ScheduledClass | undefined, words: Words): string {
  const { people, room } = scheduled ?? {};
  const told = [
    people === undefined || people === facts.people ? '' : words.people(people),
    room === undefined || facts.room === undefined || room === facts.room ? '' : inShortText(room),
  ].filter((part) => part !== '');
  return told.length === 0 ? '' : words.card.inItsClass(told);
}

/** One line a finding: how grave, what, and why behind the tap. */
export function findingLine(finding: Finding, plan: Plan, show: Show): string {
  const { sentence } = show.words.finding(
    finding,
    labelsByLine(plan),
    (id) => show.catalogue.byId.get(id)?.name ?? id,
  );
  return `*${show.words.severity(finding.severity)}:* ${sentence}`;
}

function inShort(plan: Plan, timeline: Timeline, show: Show): string {
  return plan.blocks
    .flatMap((block, place) => {
      const time = timeline.blocks[place];
      if (time === undefined || (!hasLetters(block) && !isOpenBlock(block))) return [];
      return [`${show.words.length(time.endSeconds - time.startSeconds)} ${printBlockLine(block)}`];
    })
    .join('; ');
}

/** Each exact fit is one tap. */
export function fitButtons(open: OpenPlan, report: ClassReport, words: Words): readonly ButtonFacts[] {
  return report.fit.proposals.map((proposal) => ({
    action: actions.applyEdit,
    label: words.proposal(proposal),
    value: planValue(open, proposal.edit),
  }));
}

function nextSteps(open: OpenPlan, words: Words): readonly ButtonFacts[] {
  const { buttons: labels } = words.card;
  const value = planValue(open);
  const { state } = open.record;
  return [
    ...(mayBeSent(open)
      ? [{ action: actions.sendForReview, label: labels.send, value, style: 'primary' as const }]
      : []),
    ...(state === 'in review' ? [{ action: actions.withdraw, label: labels.withdraw, value }] : []),
    {
      action: actions.openSchedule,
      label: open.scheduled === undefined ? labels.schedule : labels.reschedule,
      value,
    },
  ];
}

/** A draft that reads and has no line open. */
export function mayBeSent({ record, report }: OpenPlan): boolean {
  return record.state === 'draft' && report.kind === 'report' && openLabels(report.plan).length === 0;
}

/** What opens to read, and changes nothing. */
function lookAt(open: OpenPlan, words: Words): readonly ButtonFacts[] {
  const { buttons: labels } = words.card;
  const value = planValue(open);
  return [
    { action: actions.timeline, label: labels.timeline, value },
    { action: actions.allFindings, label: labels.findings, value },
    { action: actions.muscles, label: labels.muscles, value },
    { action: actions.options, label: words.asks.optionsButton, value },
  ];
}

/** State, version and place on the calendar, as the last line of a card. */
function standingOf(open: OpenPlan, words: Words): string {
  const { record, scheduled } = open;
  return [
    words.card.version(record.currentVersion),
    words.state(record.state, record.approvedVersion),
    scheduled === undefined
      ? words.card.notOnCalendar
      : words.card.onCalendar(words.when(scheduled.startsAt)),
  ].join(' · ');
}

export function planValue(open: OpenPlan, edit?: string): string {
  const { id, currentVersion } = open.record;
  return printButtonValue({ plan: id, version: currentVersion, ...(edit === undefined ? {} : { edit }) });
}

function labelled(label: string, text: string): string {
  return text === '' ? '' : `*${label}*  ${text}`;
}

/** Small lines under a card; what is past its room is told with the full timeline and all checks. */
function contextLines(blockId: string, lines: readonly string[]): readonly KnownBlock[] {
  const text = clip(lines.join('\n'), mostOfContext);
  return text === '' ? [] : [context(blockId, text)];
}

/** The lines that fit the card, and those that go on in the messages under it. */
function partedLines(lines: readonly string[]): {
  readonly shown: readonly string[];
  readonly left: readonly string[];
} {
  let used = 0;
  const fits = lines.findIndex((line) => {
    used += line.length + 1;
    return used > mostOfBlocks;
  });
  return fits === -1 ? { shown: lines, left: [] } : { shown: lines.slice(0, fits), left: lines.slice(fits) };
}

/** The messages a long class goes on in, in order; none where the card holds it. */
export function renderCardPages(open: OpenPlan, show: Show): readonly Message[] {
  const { report } = open;
  if (report.kind !== 'report') return [];
  const { left } = partedLines(blockLines(report.plan, report.timeline, show));
  if (left.length === 0) return [];
  const { words } = show;
  return inSeveral(`*${titleOf(report.plan, words)}* ${words.card.goesOnTitle}`, left, words);
}
