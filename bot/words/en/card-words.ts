import type { Muscle } from '../../../domain/catalogue/muscles.ts';
import type { Pattern } from '../../../domain/catalogue/patterns.ts';
import type { ClassLevel } from '../../../domain/plan/plan.ts';
import type { PlanState } from '../../../domain/plan/plan-life.ts';
import type { FactorMove } from '../../../domain/settings.ts';
import type { FitProposal } from '../../../domain/timing/fit.ts';
import type { Segment, SegmentKind, Timeline } from '../../../domain/timing/timeline.ts';

/** Lengths as the trade reads a stopwatch: `m:ss`. */
export function lengthText(seconds: number): string {
  const whole = Math.round(Math.abs(seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** Sets are counted in halves: `3`, `3½`, `½`. */
export function setsText(sets: number): string {
  const halves = Math.round(sets * 2);
  const whole = Math.floor(halves / 2);
  if (halves % 2 === 0) return String(whole);
  return whole === 0 ? '½' : `${whole}½`;
}

/** Work seconds to all other seconds inside a block, as the trade says it: `2:1`, `1:1.5`. */
export function workToRestText(workSeconds: number, otherSeconds: number): string {
  if (workSeconds === 0) return 'no work';
  if (otherSeconds === 0) return 'no rest';
  const ratio = workSeconds / otherSeconds;
  return ratio >= 1 ? `${oneDecimal(ratio)}:1` : `1:${oneDecimal(1 / ratio)}`;
}

function oneDecimal(value: number): string {
  return String(Math.round(value * 10) / 10);
}

export function levelText(level: ClassLevel): string {
  return level === 'mixed' ? 'mixed level' : `level ${level}`;
}

export function peopleText(people: number): string {
  return people === 1 ? '1 person' : `${people} people`;
}

export function fitText(totalSeconds: number, teachingSeconds: number): string {
  const spare = teachingSeconds - totalSeconds;
  if (spare === 0) return `${lengthText(totalSeconds)}, exactly the teaching time`;
  const off = lengthText(spare);
  return spare > 0
    ? `${lengthText(totalSeconds)} of ${lengthText(teachingSeconds)}, ${off} spare`
    : `${lengthText(totalSeconds)}, ${off} over the ${lengthText(teachingSeconds)} there are`;
}

export function patternSetsText(sets: Readonly<Partial<Record<Pattern, number>>>): string {
  return largestFirst(Object.entries(sets))
    .map(([pattern, count]) => `${pattern} ${setsText(count)}`)
    .join(' · ');
}

/** Largest first; past `most`, the number of muscles left out. */
export function muscleSetsText(sets: Readonly<Partial<Record<Muscle, number>>>, most: number): string {
  const all = largestFirst(Object.entries(sets)).map(([muscle, count]) => `${muscle} ${setsText(count)}`);
  const left = all.length - most;
  return left > 0 ? `${all.slice(0, most).join(' · ')} · ${left} more` : all.join(' · ');
}

function largestFirst(
  entries: readonly (readonly [string, number | undefined])[],
): readonly (readonly [string, number])[] {
  return entries
    .flatMap(([name, count]) => (count === undefined || count === 0 ? [] : [[name, count] as const]))
    .toSorted((a, b) => b[1] - a[1] || a[0].localeCompare(b[0]));
}

export function stateText(state: PlanState, approvedVersion: number | undefined): string {
  switch (state) {
    case 'draft':
      return approvedVersion === undefined ? 'draft' : `draft, v${approvedVersion} stays approved`;
    case 'in review':
      return approvedVersion === undefined
        ? 'in review'
        : `a change waits for review, v${approvedVersion} stays approved`;
    case 'approved':
      return 'approved for teaching: structure and timing';
  }
}

export function proposalLabel(proposal: FitProposal): string {
  return `Fit exactly: ${proposal.edit.replaceAll('\n', ', ')}`;
}

export function totalsText(timeline: Timeline): string {
  const parts = [`*Work* ${lengthText(timeline.workSeconds)}`, `*rest* ${lengthText(timeline.restSeconds)}`];
  const late = timeline.lateStartSeconds > 0 ? [`late starts ${lengthText(timeline.lateStartSeconds)}`] : [];
  return [...parts, ...late].join(' · ');
}

/** What a stretch without work is. */
export function segmentText(kind: SegmentKind, also: Segment['also']): string {
  switch (kind) {
    case 'work':
      return 'work';
    case 'change':
      return 'change side';
    case 'rest':
    case 'between-rounds':
    case 'between-blocks':
      return also === undefined ? restText(kind) : `${restText(kind)}, ${also}`;
    case 'explain':
      return 'explain';
    case 'set-up':
      return also === 'clear-up' ? 'clear up' : 'set up';
    case 'count-in':
      return 'count in';
    case 'open':
      return 'open';
  }
}

function restText(kind: 'rest' | 'between-rounds' | 'between-blocks'): string {
  switch (kind) {
    case 'rest':
      return 'rest';
    case 'between-rounds':
      return 'rest between rounds';
    case 'between-blocks':
      return 'rest before the next block';
  }
}

export function sideText(side: 'right' | 'left'): string {
  return `${side} side`;
}

export const cardWords = {
  untitled: 'Untitled class',
  beginners: 'beginners',
  olderAdults: 'older adults',
  hotRoom: 'hot room',
  focus: (text: string) => `focus ${text}`,
  aim: (text: string) => `aim ${text}`,
  inItsClass: (told: readonly string[]) => `in its class: ${told.join(', ')}`,
  goesOn: 'The class goes on below.',
  goesOnTitle: 'goes on',
  pageGone: 'The class is shorter now: all of it stands on the card.',
  eachRound: (labels: readonly string[]) => `each round: ${labels.join(' → ')}`,
  intervalSets: 'Interval sets',
  patterns: 'Patterns',
  conditioning: (seconds: number) => `conditioning ${lengthText(seconds)}`,
  noFindings: 'Checked: nothing to mend.',
  musclesLead: 'Interval sets, and time under tension in brackets. The research counted hard sets.',
  nextInShort: (state: PlanState) =>
    state === 'draft'
      ? 'Next: Send for review, or reply here with an edit.'
      : 'Reply here with an edit to change it.',
  problemsLeft: (count: number) => `and ${count} more lines; they are told once these read well.`,
  moreFindings: (count: number) => `and ${count} more behind All checks`,
  problemsTitle: (count: number) =>
    count === 1
      ? 'One line I could not read. Your draft is kept.'
      : `${count} lines I could not read. Your draft is kept.`,
  version: (version: number) => `v${version}`,
  factor: (factor: number, move: FactorMove | undefined) =>
    move === undefined || move.to !== factor
      ? `Change-overs × ${factor}, as set here`
      : `Change-overs × ${factor}: ${saidOfClasses(move)}`,
  factorMoved: (move: FactorMove) =>
    `Change-overs are now timed × ${move.to} instead of × ${move.from}: ${saidOfClasses(move)}. Settings, Change-overs, sets it otherwise.`,
  energy: (light: number, heavy: number) => `Energy, an estimate: ${light}–${heavy} kcal for 55–95 kg`,
  onCalendar: (when: string) => `On the calendar: ${when}`,
  notOnCalendar: 'Not on the calendar yet.',
  buttons: {
    send: 'Send for review',
    withdraw: 'Take back from review',
    schedule: 'Put on the calendar',
    reschedule: 'Change date, time or room',
    timeline: 'Full timeline',
    findings: 'All checks and why',
    muscles: 'Muscles in detail',
    undo: 'Undo',
    redo: 'Redo',
    keepAsWords: 'Keep as words, no load',
    useName: (name: string) => `Use ${name}`,
  },
} as const;

function saidOfClasses({ classes, over, short }: FactorMove): string {
  return over >= short
    ? `${over} of the last ${classes} classes ran over`
    : `${short} of the last ${classes} classes ended short`;
}
