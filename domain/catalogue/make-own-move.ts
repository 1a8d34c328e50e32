import type { KitNeed } from './kit.ts';
import type { Effort, Level, Move, MoveId, MoveSides, Position, Trait } from './move.ts';
import { cautionsOf, idOfName } from './move-row.ts';
import type { Muscle } from './muscles.ts';
import type { Pattern } from './patterns.ts';

/** What a studio says of its own move; all the rest is as with the move it works like. */
export type OwnMoveFacts = {
  readonly nicknames?: readonly string[];
  readonly primeMovers?: readonly Muscle[];
  readonly assisting?: readonly Muscle[];
  readonly pattern?: Pattern;
  readonly kit?: readonly KitNeed[];
  readonly position?: Position;
  readonly sides?: MoveSides;
  readonly effort?: Effort;
  readonly level?: Level;
  readonly easier?: MoveId;
  readonly harder?: MoveId;
  readonly cue?: string;
};

/** A move of the studio's own: a new one under this name, with the facts of the one it works like. */
export function makeOwnMove(name: string, like: Move, facts: OwnMoveFacts): Move {
  const { harder: _, retired: __, easier, otherKit, ...base } = like;
  const level = facts.level ?? like.level;
  return withFacts(
    {
      ...base,
      id: idOfName(name),
      name,
      nicknames: [],
      ...(otherKit === undefined || facts.kit !== undefined ? {} : { otherKit }),
      ...easierOption(like, level, easier),
      source: 'common practice',
    },
    facts,
  );
}

/** The same own move with other facts; its id and name stay. */
export function changeOwnMove(move: Move, facts: OwnMoveFacts): Move {
  const { otherKit, ...base } = move;
  return withFacts({ ...base, ...(otherKit === undefined || facts.kit ? {} : { otherKit }) }, facts);
}

/** Above the level of what it works like, that one is the easier option. */
function easierOption(like: Move, level: Level, easier: MoveId | undefined): { readonly easier?: MoveId } {
  if (level > like.level) return { easier: like.id };
  return level < like.level || easier === undefined ? {} : { easier };
}

function withFacts(base: Move, facts: OwnMoveFacts): Move {
  const assisting = facts.assisting ?? base.assisting;
  const primeMovers = facts.primeMovers ?? base.primeMovers;
  const told = { ...base, ...facts, primeMovers, assisting: othersThan(primeMovers, assisting, facts) };
  const traits = traitsOf(told);
  return {
    ...told,
    traits,
    oneSideAtATime: told.sides === 'both at once' && base.oneSideAtATime,
    cautions: cautionsOf(told.pattern, { ...told, traits }),
  };
}

/** A muscle named as prime mover assists no more, unless both were named. */
function othersThan(
  primeMovers: readonly Muscle[],
  assisting: readonly Muscle[],
  facts: OwnMoveFacts,
): readonly Muscle[] {
  return facts.assisting === undefined
    ? assisting.filter((muscle) => !primeMovers.includes(muscle))
    : assisting;
}

/** A jump lands hard. */
function traitsOf({ pattern, traits }: Move): readonly Trait[] {
  return pattern === 'jump' && !traits.includes('impact') ? [...traits, 'impact'] : traits;
}
