import type { Context } from '../context.ts';
import { labelledLetters } from '../plan/labels.ts';
import type { Letter, LetteredBlock, LineId, Plan } from '../plan/plan.ts';
import { buildTimeline } from '../timing/build-timeline.ts';
import type { Timeline } from '../timing/timeline.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { mendWith } from './mends.ts';

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
  const late = lateLetters(subject, context);
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
      ...mendWith(longerRest(late, subject, context)),
    },
  ];
}

/** The letters whose bouts lose too much, worst first. */
function lateLetters(
  subject: Pick<CheckSubject, 'plan' | 'timeline'>,
  context: Context,
): readonly Lateness[] {
  const { lateStartShareOfBout, lateStartSecondsOfBout } = context.settings.checks;
  return labelledLetters(subject.plan)
    .map(({ letter, block }) => latenessOf(letter, block, subject.timeline))
    .filter(
      ({ lateSeconds, boutSeconds }) =>
        lateSeconds > boutSeconds * lateStartShareOfBout || lateSeconds > lateStartSecondsOfBout,
    )
    .toSorted((one, other) => other.lateSeconds - one.lateSeconds);
}

/** Averages over the letter's bouts, in seconds. */
function latenessOf(
  letter: Letter,
  block: LetteredBlock,
  { segments, lateStarts: starts }: Timeline,
): Lateness {
  const bouts = segments.filter((segment) => segment.kind === 'work' && segment.letter === letter.id);
  const work = bouts.reduce((sum, { startSeconds, endSeconds }) => sum + endSeconds - startSeconds, 0);
  const late = starts
    .filter((start) => start.letter === letter.id)
    .reduce((sum, { lateSeconds }) => sum + lateSeconds, 0);
  const count = Math.max(1, bouts.length);
  return { letter, block, lateSeconds: late / count, boutSeconds: work / count };
}

type Change = { readonly edit: string; readonly block: LetteredBlock };

/** The first rest that is made as long as the change-overs need, mends, and still fits the teaching time. */
function longerRest(
  late: readonly Lateness[],
  { plan, timeline, fit }: CheckSubject,
  context: Context,
): string | undefined {
  const [first, ...others] = late;
  const block = first?.block;
  if (block === undefined || others.some((other) => other.block.id !== block.id)) {
    return undefined;
  }
  const lateIds = late.map(({ letter }) => letter.id);
  const needs = timeline.lateStarts.filter(({ letter }) => lateIds.includes(letter));
  const needSeconds = Math.max(0, ...needs.map((start) => start.needSeconds));
  return restsOf(block, first?.letter, needSeconds, plan).find((change) => {
    const blocks = plan.blocks.map((each) => (each.id === block.id ? change.block : each));
    const mended = { ...plan, blocks };
    const built = buildTimeline(mended, context);
    const fits = built.totalSeconds <= Math.max(fit.teachingSeconds, timeline.totalSeconds);
    return fits && lateLetters({ plan: mended, timeline: built }, context).length === 0;
  })?.edit;
}

/** The rest before the letter, then between the rounds, then all rests of the block. */
function restsOf(
  block: LetteredBlock,
  late: Letter | undefined,
  seconds: number,
  plan: Plan,
): readonly Change[] {
  if (!('rounds' in block) || block.kind === 'straight' || late === undefined) {
    return [];
  }
  const before = block.letters.at(block.letters.indexOf(late) - 1);
  const [interval, another] = block.intervals;
  const label = (letter: Letter | undefined) =>
    labelledLetters(plan).find((labelled) => labelled.letter === letter)?.label ?? '';
  const first = label(block.letters[0]);
  return [
    ...(before === undefined || (before.restSeconds ?? interval?.restSeconds ?? 0) >= seconds
      ? []
      : [
          {
            edit: `rest ${label(before)} ${seconds}`,
            block: {
              ...block,
              letters: block.letters.map((each) =>
                each === before ? { ...each, restSeconds: seconds } : each,
              ),
            },
          },
        ]),
    ...(block.betweenRoundsSeconds === undefined || block.betweenRoundsSeconds >= seconds
      ? []
      : [{ edit: `between rounds ${first} ${seconds}`, block: { ...block, betweenRoundsSeconds: seconds } }]),
    ...(interval === undefined || another !== undefined || interval.restSeconds >= seconds
      ? []
      : [
          {
            edit: `block ${first} ${interval.workSeconds}/${seconds}`,
            block: { ...block, intervals: [{ ...interval, restSeconds: seconds }] },
          },
        ]),
  ];
}
