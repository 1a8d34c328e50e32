import { type KitItem, kitItems } from '../catalogue/kit.ts';
import { kitForMove } from '../catalogue/kit-for-move.ts';
import type { Level } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import type { Room } from '../settings.ts';
import { knownMove } from '../timing/planned-moves.ts';
import { hasLetters } from './blocks-of.ts';
import type { Letter, LetteredBlock, Plan, PlannedMove } from './plan.ts';

/** Level 1 or said to be for beginners: the stricter rules hold. */
export function isForBeginners(plan: Plan): boolean {
  return plan.facts.beginners || plan.facts.level === 1;
}

/** The level the class is taught at; absent where it is mixed or not said. */
export function classLevel(plan: Plan): Level | undefined {
  if (isForBeginners(plan)) {
    return 1;
  }
  const { level } = plan.facts;
  return level === 'mixed' ? undefined : level;
}

/** The room named on the first line, as the settings know it. */
export function roomOf(plan: Plan, context: Context): Room | undefined {
  return context.settings.rooms.find(({ name }) => name === plan.facts.room);
}

/** Each line that names a move, with its letter and block. */
export type PlannedLine = {
  readonly blockIndex: number;
  readonly block: LetteredBlock;
  readonly letter: Letter;
  readonly planned: PlannedMove;
};

export function plannedLines(plan: Plan): readonly PlannedLine[] {
  return plan.blocks.flatMap((block, blockIndex) =>
    hasLetters(block)
      ? block.letters.flatMap((letter) =>
          letter.moves.map((planned) => ({ blockIndex, block, letter, planned })),
        )
      : [],
  );
}

/** Kit that may be used: what the plan's `kit:` line or else the room has, and what its own moves need. */
export function kitAtHand(plan: Plan, context: Context): ReadonlySet<KitItem> {
  const room = roomOf(plan, context);
  const listed = plan.facts.kit ?? kitItems.filter((item) => (room?.kit[item] ?? 0) > 0);
  const used = plannedLines(plan).flatMap(({ planned }) => {
    const move = knownMove(planned, context);
    return move === undefined ? [] : (kitForMove(move, (item) => listed.includes(item)) ?? move.kit);
  });
  return new Set([...listed, ...used.map(({ item }) => item)]);
}

/** Whether an option is named on the line: `easier …`, `or …`. */
export function hasGentlerOption(planned: PlannedMove): boolean {
  return planned.options.some(({ kind }) => kind === 'easier' || kind === 'or');
}

/** A class of the studio's long kind, or for older adults: getting up and lying down are looked at closer. */
export function asksForOptions(plan: Plan, context: Context): boolean {
  return plan.facts.olderAdults || plan.facts.slotSeconds >= context.settings.checks.longClassSeconds;
}
