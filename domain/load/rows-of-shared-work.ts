import type { Move } from '../catalogue/move.ts';
import type { AmrapBlock, LadderBlock, SideUse } from '../plan/plan.ts';
import { ladderSeconds, secondsOnce } from '../timing/parts-of-shared-work.ts';
import type { MoveInPlan } from '../timing/planned-moves.ts';
import { secondsPerRep } from '../timing/seconds-per-rep.ts';
import type { TimingContext } from '../timing/timing-context.ts';
import { type TransitionEnd, transitionSeconds } from '../timing/transitions.ts';
import { movesInRound, takesASide } from '../timing/work-of-letter.ts';
import { setRules, setsOfShare } from './count-sets.ts';
import type { LoadRow } from './load.ts';
import { isUnderTension, sideShare } from './tension.ts';

type SharedBlock = AmrapBlock | LadderBlock;

/** A move's part in a stretch of work: its reps where they are known, and its seconds, both sides together. */
type Part = {
  readonly entry: MoveInPlan;
  readonly sides: SideUse;
  readonly reps?: number;
  readonly seconds: number;
  readonly boutSeconds: number;
};

/**
 * The rows of an AMRAP, a ladder or for time. `lateSeconds` is what the change-over into the stretch takes
 * from its first move. Where one of a pair rests, each has half of the stretch.
 */
export function rowsOfSharedWork(
  block: SharedBlock,
  entries: readonly MoveInPlan[],
  stretchSeconds: number,
  lateSeconds: number,
  context: TimingContext,
): readonly LoadRow[] {
  const ownSeconds = block.pairs === 'one rests' ? stretchSeconds / 2 : stretchSeconds;
  const parts =
    block.kind === 'ladder'
      ? partsOfLadder(block, entries, ownSeconds, context)
      : partsOfRounds(block, entries, ownSeconds, context);
  const openEnded = isOpenEnded(block);
  return parts.flatMap((part, index) => {
    const { planned, letter, known, block: place } = part.entry;
    if (known === undefined) return [];
    const underTension = Math.max(0, part.seconds - (index === 0 ? lateSeconds : 0));
    return [
      {
        block: place,
        letter: letter.id,
        move: planned.id,
        sets: setsOfPart(part, known, openEnded),
        tensionSeconds: isUnderTension(known) ? sideShare(part.sides, known) * underTension : 0,
        conditioningSeconds: known.effort === 'conditioning' ? part.seconds : 0,
        ...(known.effort === 'reps' ? { reps: allReps(part, context) } : {}),
        about: block.kind !== 'ladder' || openEnded,
      },
    ];
  });
}

function setsOfPart({ sides, reps, seconds, boutSeconds }: Part, known: Move, openEnded: boolean): number {
  const share = sides === 'right' || sides === 'left' ? 1 / 2 : 1;
  const sets = setsOfShare(reps === undefined ? { seconds } : { reps: reps * share }, known);
  const capped = openEnded || boutSeconds < setRules.fullBoutSeconds;
  return capped ? Math.min(setRules.mostShortSetsABlock, sets) : sets;
}

/** A side at a time in a whole set each side is as good as each side. */
function sidesOf({ planned, letter }: MoveInPlan, context: TimingContext): SideUse {
  return letter.wholeSetEachSide && takesASide(planned, context) ? 'each side' : planned.sides;
}

/** What works both sides at once is done twice in a whole set each side. */
function timesThrough({ letter }: MoveInPlan, sides: SideUse): number {
  return letter.wholeSetEachSide && sides !== 'each side' ? 2 : 1;
}

function allReps({ entry, sides, reps, seconds }: Part, context: TimingContext): number {
  if (reps === undefined) return Math.floor(seconds / secondsPerRep(entry.planned, context));
  return Math.floor(sides === 'each side' ? 2 * reps : reps);
}

function isOpenEnded(block: SharedBlock): boolean {
  if (block.kind === 'ladder') return block.capSeconds !== undefined;
  return block.kind === 'amrap' || block.aboutRounds === undefined || block.aboutRounds === 1;
}

/** Every move once a rung; under a cap that is too short for all of it, as much as fits. */
function partsOfLadder(
  block: LadderBlock,
  entries: readonly MoveInPlan[],
  stretchSeconds: number,
  context: TimingContext,
): readonly Part[] {
  const wholeSeconds = ladderSeconds(block, context);
  const done = wholeSeconds === 0 ? 0 : Math.min(1, stretchSeconds / wholeSeconds);
  return entries.map((entry) => {
    const { planned, letter } = entry;
    const sides = sidesOf(entry, context);
    const rungs = block.rungs.filter((_, index) => movesInRound(letter, index + 1).includes(planned));
    const repsOfRungs = rungs.map((rung) => planned.reps ?? rung);
    const reps = done * timesThrough(entry, sides) * sum(repsOfRungs);
    const seconds = sum(repsOfRungs.map((rung) => secondsOnce(entry, rung, context)));
    const share = wholeSeconds === 0 ? 1 / entries.length : seconds / wholeSeconds;
    return {
      entry,
      sides,
      ...(planned.workSeconds === undefined ? { reps } : {}),
      seconds: stretchSeconds * share,
      boutSeconds: rungs.length === 0 ? 0 : seconds / rungs.length,
    };
  });
}

/** So many rounds as are said, or as fit; where a move gives neither reps nor time, all share alike. */
function partsOfRounds(
  block: AmrapBlock,
  entries: readonly MoveInPlan[],
  stretchSeconds: number,
  context: TimingContext,
): readonly Part[] {
  const once = entries.map((entry) => onceARound(entry, context));
  const known = once.filter((seconds) => seconds !== undefined);
  const allKnown = known.length === entries.length;
  const workSeconds = sum(known);
  const roundSeconds = workSeconds + transitionsARound(entries, context);
  const fitting = allKnown && roundSeconds > 0 ? stretchSeconds / roundSeconds : undefined;
  const rounds = block.aboutRounds ?? (block.kind === 'for time' ? 1 : fitting);
  return entries.map((entry, index) => {
    const { planned } = entry;
    const sides = sidesOf(entry, context);
    const boutSeconds = once[index];
    const share = allKnown && workSeconds > 0 ? (boutSeconds ?? 0) / workSeconds : 1 / entries.length;
    const seconds = stretchSeconds * share;
    return {
      entry,
      sides,
      ...(planned.reps === undefined || rounds === undefined
        ? {}
        : { reps: planned.reps * rounds * turnsARound(entry) * timesThrough(entry, sides) }),
      seconds,
      boutSeconds: boutSeconds ?? (rounds === undefined ? seconds : seconds / rounds),
    };
  });
}

/** A letter by round does one of its moves a round. */
function turnsARound({ letter }: MoveInPlan): number {
  return letter.order === 'by round' ? 1 / letter.moves.length : 1;
}

function onceARound(entry: MoveInPlan, context: TimingContext): number | undefined {
  const { planned } = entry;
  if (planned.reps === undefined && planned.workSeconds === undefined) return undefined;
  return secondsOnce(entry, planned.reps ?? 0, context) * turnsARound(entry);
}

/** All change-overs of a round, a whole set each side on the right and then on the left. */
function transitionsARound(entries: readonly MoveInPlan[], context: TimingContext): number {
  const ends = [...new Set(entries.map(({ letter }) => letter))].flatMap(
    (letter): readonly TransitionEnd[] => {
      const own = entries.filter((entry) => entry.letter === letter);
      return letter.wholeSetEachSide
        ? [
            ...own.map((entry) => endOn('right', entry, context)),
            ...own.map((entry) => endOn('left', entry, context)),
          ]
        : own;
    },
  );
  return sum(
    ends.map((to, index) => {
      const from = ends.at(index - 1);
      return from === undefined ? 0 : transitionSeconds(from, to, false, context.settings.transitions);
    }),
  );
}

function endOn(side: 'right' | 'left', entry: MoveInPlan, context: TimingContext): TransitionEnd {
  return takesASide(entry.planned, context) ? { ...entry, side } : entry;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
