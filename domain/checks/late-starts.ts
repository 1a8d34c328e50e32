import type { Context } from '../context.ts';
import { labelledLetters } from '../plan/labels.ts';
import type { Letter, LetteredBlock, LineId } from '../plan/plan.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { mendWith, secondsToGrow } from './mends.ts';

export type LateStarts = FindingBase & {
  readonly code: 'late-starts';
  /** The letter that loses most, seconds a bout on average. */
  readonly letter: LineId;
  readonly lateSecondsABout: number;
  readonly boutSeconds: number;
};

type Lateness = {
  readonly letter: Letter;
  readonly block: LetteredBlock;
  readonly lateSeconds: number;
  readonly boutSeconds: number;
};

/** Change-overs eat too much of a letter's bouts, judged over all its bouts. */
export function lateStarts(subject: CheckSubject, context: Context): readonly LateStarts[] {
  const { lateStartShareOfBout, lateStartSecondsOfBout } = context.settings.checks;
  const late = labelledLetters(subject.plan)
    .map(({ letter, block }) => latenessOf(letter, block, subject))
    .filter(
      ({ lateSeconds, boutSeconds }) =>
        lateSeconds > boutSeconds * lateStartShareOfBout || lateSeconds > lateStartSecondsOfBout,
    )
    .toSorted((one, other) => other.lateSeconds - one.lateSeconds);
  const worst = late[0];
  if (worst === undefined) {
    return [];
  }
  return [
    {
      code: 'late-starts',
      severity: 'look at',
      lines: late.map(({ letter }) => letter.id),
      source: 'common practice',
      letter: worst.letter.id,
      lateSecondsABout: Math.round(worst.lateSeconds),
      boutSeconds: Math.round(worst.boutSeconds),
      ...mendWith(late.length === 1 ? longerRestBefore(worst, subject, context) : undefined),
    },
  ];
}

/** Averages over the letter's bouts, in seconds. */
function latenessOf(letter: Letter, block: LetteredBlock, { timeline }: CheckSubject): Lateness {
  const bouts = timeline.segments.filter(
    (segment) => segment.kind === 'work' && segment.letter === letter.id,
  );
  const work = bouts.reduce((sum, { startSeconds, endSeconds }) => sum + endSeconds - startSeconds, 0);
  const late = timeline.lateStarts
    .filter((start) => start.letter === letter.id)
    .reduce((sum, { lateSeconds }) => sum + lateSeconds, 0);
  const count = Math.max(1, bouts.length);
  return { letter, block, lateSeconds: late / count, boutSeconds: work / count };
}

/** Where only the letter's first move is late: the rest before it, as long as its change-over needs. */
function longerRestBefore(
  { letter, block }: Lateness,
  subject: CheckSubject,
  context: Context,
): string | undefined {
  const starts = subject.timeline.lateStarts.filter((start) => start.letter === letter.id);
  const first = letter.moves[0]?.id;
  const at = block.letters.indexOf(letter);
  const before = block.letters.at(at - 1);
  const needSeconds = Math.max(0, ...starts.map((start) => start.needSeconds));
  const rounds = 'rounds' in block ? block.rounds : 1;
  const takesRest = block.kind === 'circuit' || block.kind === 'stations' || block.kind === 'finisher';
  const growth = starts.reduce((sum, { lateSeconds }) => sum + lateSeconds, 0) + needSeconds;
  if (!takesRest || before === undefined || (before === letter && rounds === 1)) {
    return undefined;
  }
  if (starts.some(({ move }) => move !== first) || secondsToGrow(subject, context) < growth) {
    return undefined;
  }
  const label = labelledLetters(subject.plan).find((labelled) => labelled.letter === before)?.label;
  return label && `rest ${label} ${needSeconds}`;
}
