import type { KitItem } from '../catalogue/kit.ts';
import type { Level, MoveId, Tempo } from '../catalogue/move.ts';
import type { Muscle } from '../catalogue/muscles.ts';
import type { Pattern } from '../catalogue/patterns.ts';
import type { Span } from '../span.ts';

/** The number of this shape, stored beside each version of a plan. */
export const planShape = 1;

/** Keeps its line through edits, moves and swaps, so that comments and findings can follow it. */
export type LineId = string;

export type ClassLevel = Level | 'mixed';

/** Wall time as written, in the studio's zone; the instant is computed by `calendar/`. */
export type WallTime = { readonly date: string; readonly time: string };

/** What a class is, beside its blocks: the title line and `kit:`. */
export type PlanFacts = {
  readonly title?: string;
  readonly slotSeconds: number;
  readonly level?: ClassLevel;
  readonly people?: number;
  readonly focus?: string;
  readonly aim?: string;
  readonly beginners: boolean;
  readonly olderAdults: boolean;
  readonly hotRoom: boolean;
  readonly startsAt?: WallTime;
  readonly room?: string;
  /** What may be used; absent means the room's kit; empty means none. */
  readonly kit?: readonly KitItem[];
};

/** Times of a bout, in seconds. */
export type Interval = { readonly workSeconds: number; readonly restSeconds: number };

export type SideUse = 'both' | 'each side' | 'split sides' | 'alternating' | 'right' | 'left';

export type Weight =
  | { readonly kind: 'mass'; readonly amount: number; readonly unit: 'kg' | 'lb' }
  | { readonly kind: 'feel'; readonly feel: 'light' | 'medium' | 'heavy' };

/** An easier or harder option, or another move to choose; unknown words are kept as text. */
export type Option = {
  readonly kind: 'easier' | 'harder' | 'or';
  readonly moveId?: MoveId;
  readonly text: string;
};

/** The words of an open line; they bind what may fill it. */
export type Wish = {
  readonly words: string;
  readonly muscles: readonly Muscle[];
  readonly patterns: readonly Pattern[];
  readonly region?: 'upper' | 'lower' | 'trunk';
  readonly kit: readonly KitItem[];
  readonly without: readonly ('kit' | KitItem | 'jumps' | 'floor' | 'wrists' | 'overhead')[];
  readonly standing: boolean;
};

export type MoveChoice =
  | { readonly kind: 'move'; readonly moveId: MoveId }
  | { readonly kind: 'open'; readonly wish: Wish }
  /** A line kept as words with its time and no load, so that an unknown move never blocks a class. */
  | { readonly kind: 'words'; readonly text: string };

/** One move of a letter, with what was written beside it. */
export type PlannedMove = {
  readonly id: LineId;
  readonly span: Span;
  readonly choice: MoveChoice;
  readonly sides: SideUse;
  readonly workSeconds?: number;
  readonly reps?: number;
  readonly tempo?: Tempo;
  readonly weight?: Weight;
  readonly rpe?: number;
  readonly metres?: number;
  readonly options: readonly Option[];
  readonly note?: string;
};

/**
 * One line of a block. `in turn`: its moves back to back (one move, superset, tri-set, giant set);
 * `by round`: one of its moves a round.
 */
export type Letter = {
  readonly id: LineId;
  readonly span: Span;
  readonly order: 'in turn' | 'by round';
  readonly moves: readonly PlannedMove[];
  readonly restSeconds?: number;
  readonly wholeSetEachSide: boolean;
  readonly burnout: boolean;
  /** Straight sets only: its own number of rounds (`goblet squat 3x10`). */
  readonly rounds?: number;
  readonly say: readonly string[];
};

type BlockBase = {
  readonly id: LineId;
  readonly span: Span;
  readonly name?: string;
};

type LetteredBase = BlockBase & {
  readonly letters: readonly Letter[];
  readonly countInSeconds?: number;
  readonly burnout: boolean;
  readonly marchInRests: boolean;
  /** In pairs: `swap` both work and change roles; `one rests` a bout of work, then one as long of rest. */
  readonly pairs?: 'swap' | 'one rests';
};

/** Warm-up, cool-down, mobility, song: a fixed length; moves are listed, other words kept as text. */
export type OpenBlock = BlockBase & {
  readonly kind: 'warm-up' | 'cool-down' | 'mobility' | 'song';
  /** `to the end` (cool-down only) takes what is left of the teaching time. */
  readonly length: { readonly kind: 'fixed'; readonly seconds: number } | { readonly kind: 'to the end' };
  readonly items: readonly OpenItem[];
  readonly say: readonly string[];
};

export type OpenItem = {
  readonly id: LineId;
  readonly span: Span;
  readonly what:
    | { readonly kind: 'move'; readonly moveId: MoveId }
    | { readonly kind: 'words'; readonly text: string };
  readonly workSeconds?: number;
  /** What else stands beside a known move, as written: `10 each side`. */
  readonly detail?: string;
};

/**
 * Rounds on the clock. `intervals` holds one value for all rounds, or one a round (its length is then
 * `rounds`); it is empty in straight sets whose letters carry their own reps. Such sets with a rest have one
 * interval with 0 seconds of work (`straight x3, rest 60`): the work is then reps × seconds a rep.
 */
export type RoundsBlock = LetteredBase & {
  readonly kind: 'circuit' | 'straight' | 'stations' | 'finisher';
  readonly rounds: number;
  readonly intervals: readonly Interval[];
  /** Circuit, stations, finisher: replaces the letter's rest at the end of every round but the last. */
  readonly betweenRoundsSeconds?: number;
  /** Straight only: the same at the end of every letter but the last. */
  readonly betweenLettersSeconds?: number;
  /** Stations only. */
  readonly peoplePerStation?: number;
};

/** A letter starts on every interval, in turn; what is left of it is rest that belongs to it. */
export type EmomBlock = LetteredBase & {
  readonly kind: 'emom';
  readonly intervalSeconds: number;
  readonly intervals: number;
  /** Work of each move where given for the block; else reps × seconds a rep. */
  readonly workSeconds?: number;
};

/** Tabata's protocol: 8 bouts of 20/10 a time, one move a bout, its moves in turn. */
export type TabataBlock = LetteredBase & {
  readonly kind: 'tabata';
  readonly times: number;
  /** Absent: the times follow on, each ending in its last 10 s. */
  readonly betweenSeconds?: number;
};

export type AmrapBlock = LetteredBase & {
  readonly kind: 'amrap' | 'for time';
  /** AMRAP: its length; for time: the cap. All of it is work. */
  readonly seconds: number;
  readonly aboutRounds?: number;
};

/** Each move once a rung, `rungs` holding the reps of each rung. */
export type LadderBlock = LetteredBase & {
  readonly kind: 'ladder';
  readonly rungs: readonly number[];
  readonly capSeconds?: number;
};

/** Time with no moves. `explain` on a rest or water break puts the explaining inside it. */
export type TimeBlock = BlockBase & {
  readonly kind: 'rest' | 'water' | 'explain' | 'set-up' | 'clear-up';
  readonly seconds: number;
  readonly explain: boolean;
};

export type LetteredBlock = RoundsBlock | EmomBlock | TabataBlock | AmrapBlock | LadderBlock;
export type Block = OpenBlock | LetteredBlock | TimeBlock;
export type BlockKind = Block['kind'];

/** A class as read: plain data, in the order taught. */
export type Plan = {
  readonly facts: PlanFacts;
  readonly blocks: readonly Block[];
};
