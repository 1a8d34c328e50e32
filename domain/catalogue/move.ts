import type { KitNeed } from './kit.ts';
import type { Muscle } from './muscles.ts';
import type { Pattern } from './patterns.ts';

export type Position = 'standing' | 'kneeling' | 'seated' | 'supine' | 'prone' | 'side-lying';

/** How a move treats left and right: both limbs together, by turns of itself, or one side a bout. */
export type MoveSides = 'both at once' | 'alternating by nature' | 'one-sided';

/** `reps`: counted repetitions; `hold`: seconds without movement; `conditioning`: 0 sets; `mobility`: 0 sets. */
export type Effort = 'reps' | 'hold' | 'conditioning' | 'mobility';

/** Seconds of one repetition: lower, pause, lift, pause. */
export type Tempo = {
  readonly lowerSeconds: number;
  readonly bottomPauseSeconds: number;
  readonly liftSeconds: number;
  readonly topPauseSeconds: number;
};

export type Level = 1 | 2 | 3;

/** Facts that checks ask for; absent means no. */
export const traits = [
  'grip', // loaded hinge, carry or pull that tires the grip
  'impact', // both feet leave the floor or land hard
  'ballistic', // swings, snatches, throws, jumps: counts half a set
  'throw', // an implement or limb flies or swings: nobody lies next to it
  'overhead',
  'compound',
  'wrists', // weight through bent wrists
  'lower back', // loads the lower back
  'shoulders', // loads the shoulders even where they are not the prime mover
  'technical',
  'needs space', // swings, carries and travelling moves
  'head below heart',
] as const;
export type Trait = (typeof traits)[number];

/** The one list of cautions; the words for each live in `bot/words`. */
export const cautions = [
  'keep clear of the swing',
  'brace, keep the back long',
  'land softly',
  'wrists: use fists or handles',
  'neck long, no pulling on the head',
  'breathe out on effort',
  'check bands and anchors',
  'loaded twist or bend: offer a straight-back option',
  'flat on the back: offer a raised option',
  'head down: come up slowly',
  'knees: work in a comfortable range',
  'shoulders: work in a comfortable range',
] as const;
export type Caution = (typeof cautions)[number];

/** A row of the Adult Compendium of Physical Activities; edition and code belong together. */
export type EnergyRow = { readonly edition: 2011 | 2024; readonly code: string; readonly met: number };

/** Where a row's muscle facts come from: a named publication, or `common practice`. */
export type FactSource = 'common practice' | { readonly published: string };

export type MoveId = string;

export type Move = {
  /** The first of `names` in kebab-case; never changed, never reused. */
  readonly id: MoveId;
  /** The canonical name in the trade's words. */
  readonly name: string;
  /** Nicknames, abbreviations and spellings people type; unique over the catalogue. */
  readonly nicknames: readonly string[];
  readonly primeMovers: readonly Muscle[];
  readonly assisting: readonly Muscle[];
  readonly pattern: Pattern;
  readonly kit: readonly KitNeed[];
  /** Other kit that serves the same move, any one in place of `kit`; `kit-for-move.ts` chooses. */
  readonly otherKit?: readonly (readonly KitNeed[])[];
  readonly position: Position;
  readonly sides: MoveSides;
  /** True where a both-at-once move can sensibly be done one side at a time (`each side` is then allowed). */
  readonly oneSideAtATime: boolean;
  readonly effort: Effort;
  readonly tempo: Tempo;
  readonly level: Level;
  readonly easier?: MoveId;
  readonly harder?: MoveId;
  readonly setUpCue: string;
  readonly cue: string;
  readonly cautions: readonly Caution[];
  readonly traits: readonly Trait[];
  readonly energy: EnergyRow;
  readonly source: FactSource;
  /** A studio's own move that is offered nowhere; plans that name it stay readable. */
  readonly retired?: true;
};
