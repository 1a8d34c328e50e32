import { againstTheClock } from './against-the-clock.ts';
import { bellsAndRungs } from './bells-and-rungs.ts';
import { downTheLadder } from './down-the-ladder.ts';
import { firstSteps } from './first-steps.ts';
import { heavyPair } from './heavy-pair.ts';
import { roundTheRoom } from './round-the-room.ts';
import { rowAndSquat } from './row-and-squat.ts';
import { shortArms } from './short-arms.ts';
import { sideBySide } from './side-by-side.ts';
import { steadyFeet } from './steady-feet.ts';
import { steadyGrind } from './steady-grind.ts';
import { twentyTen } from './twenty-ten.ts';
import { twoByTwo } from './two-by-two.ts';
import type { WholeClass } from './whole-class.ts';

export const wholeClasses: readonly WholeClass[] = [
  againstTheClock,
  bellsAndRungs,
  downTheLadder,
  firstSteps,
  heavyPair,
  roundTheRoom,
  rowAndSquat,
  shortArms,
  sideBySide,
  steadyFeet,
  steadyGrind,
  twentyTen,
  twoByTwo,
];
