import { energyRows } from './energy-rows.ts';
import type { KitItem, KitNeed } from './kit.ts';
import type { Caution, Effort, FactSource, Level, Move, MoveSides, Position, Tempo, Trait } from './move.ts';
import type { Muscle } from './muscles.ts';
import type { Pattern } from './patterns.ts';

/**
 * One line of a table of moves. What is left out is the commonest case: standing, both sides at once,
 * counted in reps of 2-0-1-0, level 1, without kit. The energy row is named by its text.
 */
export type MoveRow = {
  readonly name: string;
  readonly also?: readonly string[];
  readonly prime: readonly Muscle[];
  readonly assisting?: readonly Muscle[];
  readonly kit?: readonly KitNeed[];
  readonly orKit?: readonly (readonly KitNeed[])[];
  readonly position?: Position;
  readonly sides?: MoveSides;
  readonly oneSideAtATime?: true;
  readonly effort?: Effort;
  readonly tempo?: Tempo;
  readonly level?: Level;
  readonly easier?: string;
  readonly harder?: string;
  readonly setUp: string;
  readonly cue: string;
  readonly traits?: readonly Trait[];
  readonly mind?: readonly Caution[];
  readonly energy: keyof typeof energyRows;
  readonly source: FactSource;
};

export const one = (item: KitItem): KitNeed => ({ item, pieces: 1 });
export const pair = (item: KitItem): KitNeed => ({ item, pieces: 2 });
export const loadedBarbell: readonly KitNeed[] = [one('barbell'), pair('plate')];

const tempo = (
  lowerSeconds: number,
  bottomPauseSeconds: number,
  liftSeconds: number,
  topPauseSeconds: number,
): Tempo => ({ lowerSeconds, bottomPauseSeconds, liftSeconds, topPauseSeconds });

const steady = tempo(2, 0, 1, 0);

/**
 * Default repetitions, all within the 1–2 s each way of Ratamess NA et al., Med Sci Sports Exerc
 * 2009;41:687–708, but `long`, which is common practice. `brisk` gives the 15 repetitions in 30 s of
 * body-weight work that Klika B, Jordan C, ACSM's Health Fit J 2013;17(3):8–13 name.
 */
export const brisk = tempo(1, 0, 1, 0);
export const slow = tempo(2, 0, 2, 0);
export const squeezed = tempo(2, 0, 1, 1);
export const long = tempo(3, 1, 3, 1);

/** A move's id: its name in kebab-case. */
export const idOfName = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll(/['’]/g, '')
    .replaceAll(/[^a-z0-9]+/g, '-');

const isLoaded = (kit: readonly KitNeed[]): boolean => kit.some((need) => need.item !== 'mat');
const usesBandOrAnchor = (kit: readonly KitNeed[]): boolean =>
  kit.some(({ item }) => item === 'long band' || item === 'mini band' || item === 'suspension strap');

/** What cautions follow from; `mind` are further ones. */
type CautionFacts = Pick<MoveRow, 'traits' | 'kit' | 'position' | 'effort' | 'mind'>;

/** Cautions that follow from a move's facts, so that none can forget one. */
export const cautionsOf = (pattern: Pattern, row: CautionFacts): readonly Caution[] => {
  const traits = row.traits ?? [];
  const kit = row.kit ?? [];
  const trunk = pattern === 'trunk flexion' || pattern === 'rotation';
  const found: readonly (Caution | false)[] = [
    traits.includes('throw') && 'keep clear of the swing',
    traits.includes('lower back') && 'brace, keep the back long',
    traits.includes('impact') && 'land softly',
    traits.includes('wrists') && 'wrists: use fists or handles',
    pattern === 'trunk flexion' && row.position === 'supine' && 'neck long, no pulling on the head',
    row.effort === 'hold' && 'breathe out on effort',
    usesBandOrAnchor(kit) && 'check bands and anchors',
    trunk && isLoaded(kit) && 'loaded twist or bend: offer a straight-back option',
    row.position === 'supine' && 'flat on the back: offer a raised option',
    traits.includes('head below heart') && 'head down: come up slowly',
    (pattern === 'squat' || pattern === 'lunge' || pattern === 'jump') &&
      'knees: work in a comfortable range',
    (traits.includes('overhead') || traits.includes('shoulders')) && 'shoulders: work in a comfortable range',
  ];
  const derived = found.filter((caution) => caution !== false);
  return [...new Set([...derived, ...(row.mind ?? [])])];
};

const moveOfRow = (pattern: Pattern, row: MoveRow): Move => ({
  id: idOfName(row.name),
  name: row.name,
  nicknames: row.also ?? [],
  primeMovers: row.prime,
  assisting: row.assisting ?? [],
  pattern,
  kit: row.kit ?? [],
  ...(row.orKit === undefined ? {} : { otherKit: row.orKit }),
  position: row.position ?? 'standing',
  sides: row.sides ?? 'both at once',
  oneSideAtATime: row.oneSideAtATime ?? false,
  effort: row.effort ?? 'reps',
  tempo: row.tempo ?? steady,
  level: row.level ?? 1,
  ...(row.easier === undefined ? {} : { easier: row.easier }),
  ...(row.harder === undefined ? {} : { harder: row.harder }),
  setUpCue: row.setUp,
  cue: row.cue,
  cautions: cautionsOf(pattern, row),
  traits: row.traits ?? [],
  energy: energyRows[row.energy],
  source: row.source,
});

/** A table of moves that share one pattern. */
export const movesOfPattern = (pattern: Pattern, rows: readonly MoveRow[]): readonly Move[] =>
  rows.map((row) => moveOfRow(pattern, row));
