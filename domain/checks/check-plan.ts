import type { Context } from '../context.ts';
import { type AboveLevel, aboveLevel } from './above-level.ts';
import { type AllOutTooLong, allOutTooLong } from './all-out-too-long.ts';
import { type BallisticWithoutRest, ballisticWithoutRest } from './ballistic-without-rest.ts';
import { type BandsToCheck, bandsToCheck } from './bands-to-check.ts';
import type { CheckSubject } from './check-subject.ts';
import { type EarlyJumps, earlyJumps } from './early-jumps.ts';
import type { Severity } from './finding.ts';
import { type FloorCrowded, floorCrowded } from './floor-crowded.ts';
import { type FrontToBackFlips, frontToBackFlips } from './front-to-back-flips.ts';
import { type HeadDownThenUp, headDownThenUp } from './head-down-then-up.ts';
import { type KitInUse, kitInUse } from './kit-in-use.ts';
import { type KitShort, kitShort } from './kit-short.ts';
import { type LateStarts, lateStarts } from './late-starts.ts';
import { type LoadedWithoutBreak, loadedWithoutBreak } from './loaded-without-break.ts';
import { type LongOnTheBack, longOnTheBack } from './long-on-the-back.ts';
import { type LowerBackThreeInARow, lowerBackThreeInARow } from './lower-back-three-in-a-row.ts';
import { type LyingBesideThrow, lyingBesideThrow } from './lying-beside-throw.ts';
import { type MainLiftsAgainstWish, mainLiftsAgainstWish } from './main-lifts-against-wish.ts';
import { type ManyNewMoves, manyNewMoves } from './many-new-moves.ts';
import { type ManyUpsAndDowns, manyUpsAndDowns } from './many-ups-and-downs.ts';
import { type MuscleTrainedLately, muscleTrainedLately } from './muscle-trained-lately.ts';
import { type NewMoveNotExplained, newMoveNotExplained } from './new-move-not-explained.ts';
import { type NewMoveOutOfSight, newMoveOutOfSight } from './new-move-out-of-sight.ts';
import { type NoBreakBetweenBlocks, noBreakBetweenBlocks } from './no-break-between-blocks.ts';
import { type NoCoolDown, noCoolDown } from './no-cool-down.ts';
import { type NoTimeToWipe, noTimeToWipe } from './no-time-to-wipe.ts';
import { type NoWarmUp, noWarmUp } from './no-warm-up.ts';
import { type OpenLineLeft, openLineLeft } from './open-line-left.ts';
import { type OutOfStepThrow, outOfStepThrow } from './out-of-step-throw.ts';
import { type OverRoomCapacity, overRoomCapacity } from './over-room-capacity.ts';
import { type OverTeachingTime, overTeachingTime } from './over-teaching-time.ts';
import { type PushPullUneven, pushPullUneven } from './push-pull-uneven.ts';
import { type SamePartThreeInARow, samePartThreeInARow } from './same-part-three-in-a-row.ts';
import { type SamePrimeMover, samePrimeMover } from './same-prime-mover.ts';
import { type ShortCoolDown, shortCoolDown } from './short-cool-down.ts';
import { type ShortRestForHeavyWork, shortRestForHeavyWork } from './short-rest-for-heavy-work.ts';
import { type ShortWarmUp, shortWarmUp } from './short-warm-up.ts';
import { type SidesUnequal, sidesUnequal } from './sides-unequal.ts';
import { type StationLengthsUnequal, stationLengthsUnequal } from './station-lengths-unequal.ts';
import { type TimeUnused, timeUnused } from './time-unused.ts';
import { turnsOf } from './turns-of.ts';
import { type TwoTechnicalStations, twoTechnicalStations } from './two-technical-stations.ts';
import { type TwoWeightsFromOnePair, twoWeightsFromOnePair } from './two-weights-from-one-pair.ts';
import { type WarmUpMissesPatterns, warmUpMissesPatterns } from './warm-up-misses-patterns.ts';
import { type WeightsUnderfoot, weightsUnderfoot } from './weights-underfoot.ts';

/** Everything the checks can find, told apart by `code`. */
export type Finding =
  | LyingBesideThrow
  | BallisticWithoutRest
  | LowerBackThreeInARow
  | OverRoomCapacity
  | OverTeachingTime
  | KitShort
  | KitInUse
  | SidesUnequal
  | OpenLineLeft
  | OutOfStepThrow
  | LoadedWithoutBreak
  | AllOutTooLong
  | NoWarmUp
  | EarlyJumps
  | ShortWarmUp
  | NoCoolDown
  | ShortCoolDown
  | AboveLevel
  | LateStarts
  | SamePartThreeInARow
  | ShortRestForHeavyWork
  | SamePrimeMover
  | NoBreakBetweenBlocks
  | HeadDownThenUp
  | LongOnTheBack
  | NewMoveNotExplained
  | NewMoveOutOfSight
  | ManyNewMoves
  | TwoTechnicalStations
  | StationLengthsUnequal
  | FloorCrowded
  | TwoWeightsFromOnePair
  | ManyUpsAndDowns
  | FrontToBackFlips
  | WarmUpMissesPatterns
  | PushPullUneven
  | TimeUnused
  | MuscleTrainedLately
  | BandsToCheck
  | WeightsUnderfoot
  | NoTimeToWipe
  | MainLiftsAgainstWish;

type Check = (subject: CheckSubject, context: Context) => readonly Finding[];

/** Worst first within a severity. */
const checks: readonly Check[] = [
  lyingBesideThrow,
  ballisticWithoutRest,
  lowerBackThreeInARow,
  overRoomCapacity,
  overTeachingTime,
  kitShort,
  kitInUse,
  sidesUnequal,
  openLineLeft,
  outOfStepThrow,
  loadedWithoutBreak,
  allOutTooLong,
  noWarmUp,
  earlyJumps,
  shortWarmUp,
  noCoolDown,
  shortCoolDown,
  aboveLevel,
  lateStarts,
  samePartThreeInARow,
  shortRestForHeavyWork,
  samePrimeMover,
  noBreakBetweenBlocks,
  headDownThenUp,
  longOnTheBack,
  newMoveNotExplained,
  newMoveOutOfSight,
  manyNewMoves,
  twoTechnicalStations,
  stationLengthsUnequal,
  floorCrowded,
  twoWeightsFromOnePair,
  manyUpsAndDowns,
  frontToBackFlips,
  warmUpMissesPatterns,
  pushPullUneven,
  timeUnused,
  muscleTrainedLately,
  bandsToCheck,
  weightsUnderfoot,
  noTimeToWipe,
  mainLiftsAgainstWish,
];

const severities: readonly Severity[] = ['must fix', 'look at', 'good to know'];

/**
 * Findings in the order shown: *must fix*, *look at*, *good to know*, the worst first in each. Those whose
 * code is in `context.dismissed` are left out.
 */
export function checkPlan(subject: CheckSubject, context: Context): readonly Finding[] {
  const prepared = { ...subject, turns: turnsOf(subject, context) };
  const found = checks
    .flatMap((check) => check(prepared, context))
    .filter(({ code }) => context.dismissed?.has(code) !== true);
  return severities.flatMap((severity) => found.filter((finding) => finding.severity === severity));
}
