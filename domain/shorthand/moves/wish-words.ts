import type { KitItem } from '../../catalogue/kit.ts';
import { groupOfMuscle, type Muscle, muscles } from '../../catalogue/muscles.ts';
import { type Pattern, patterns } from '../../catalogue/patterns.ts';
import type { Wish } from '../../plan/plan.ts';
import { kitPhrases } from '../kit-words.ts';

/** What one word of an open line adds to its wish. */
export type WishPart = Partial<Omit<Wish, 'words'>>;

const everydayMuscles: Readonly<Record<string, readonly Muscle[]>> = {
  quads: ['quadriceps'],
  quad: ['quadriceps'],
  hams: ['hamstrings'],
  hamstring: ['hamstrings'],
  calf: ['calves'],
  glute: ['glutes'],
  adductors: ['hip adductors'],
  'inner thighs': ['hip adductors'],
  abductors: ['hip abductors'],
  'outer hips': ['hip abductors'],
  lat: ['lats'],
  'low back': ['lower back'],
  abs: ['abdominals'],
  pecs: ['chest'],
  delts: ['shoulders'],
  shoulder: ['shoulders'],
  'rear delts': ['rear shoulders'],
  'rear shoulder': ['rear shoulders'],
  bicep: ['biceps'],
  tricep: ['triceps'],
  forearm: ['forearms'],
  arms: muscles.filter((muscle) => groupOfMuscle[muscle] === 'arms'),
  back: muscles.filter((muscle) => groupOfMuscle[muscle] === 'back'),
  hips: muscles.filter((muscle) => groupOfMuscle[muscle] === 'hips'),
};

const everydayPatterns: Readonly<Record<string, readonly Pattern[]>> = {
  row: ['horizontal pull'],
  press: ['horizontal push', 'vertical push'],
  pull: ['horizontal pull', 'vertical pull'],
  push: ['horizontal push', 'vertical push'],
  core: ['trunk flexion', 'anti-extension', 'anti-rotation', 'rotation', 'lateral flexion'],
  legs: ['squat', 'hinge', 'lunge'],
};

const regions: Readonly<Record<string, 'upper' | 'lower' | 'trunk'>> = {
  upper: 'upper',
  'upper body': 'upper',
  lower: 'lower',
  'lower body': 'lower',
  trunk: 'trunk',
};

const without: Readonly<Record<string, Wish['without'][number]>> = {
  'no kit': 'kit',
  'without kit': 'kit',
  'no equipment': 'kit',
  'body weight': 'kit',
  'no jumps': 'jumps',
  'no jump': 'jumps',
  'no jumping': 'jumps',
  'no floor': 'floor',
  'no wrists': 'wrists',
  'no wrist': 'wrists',
  'no overhead': 'overhead',
  'nothing overhead': 'overhead',
};

const kitWishes: readonly (readonly [string, WishPart])[] = [...kitPhrases].flatMap(
  ([words, items]): readonly (readonly [string, WishPart])[] => [
    [words, { kit: items }],
    [`no ${words}`, { without: items }],
  ],
);

/** Every word an open line knows; a muscle's or pattern's own name wins over a region or kit word. */
export const wishPhrases: ReadonlyMap<string, WishPart> = new Map<string, WishPart>([
  ...kitWishes,
  ...Object.entries(without).map(([words, what]) => [words, { without: [what] }] as const),
  ...Object.entries(regions).map(([words, region]) => [words, { region }] as const),
  ...Object.entries(everydayPatterns).map(([words, named]) => [words, { patterns: named }] as const),
  ...patterns.map((pattern) => [pattern, { patterns: [pattern] }] as const),
  ...Object.entries(everydayMuscles).map(([words, named]) => [words, { muscles: named }] as const),
  ...muscles.map((muscle) => [muscle, { muscles: [muscle] }] as const),
  ['standing', { standing: true }],
]);

/** All parts of an open line's wish together; `words` as typed. */
export function wishOf(words: string, parts: readonly WishPart[]): Wish {
  const region = parts.findLast((part) => part.region !== undefined)?.region;
  const all = <Value>(lists: readonly (readonly Value[] | undefined)[]): readonly Value[] => [
    ...new Set(lists.flatMap((list) => list ?? [])),
  ];
  return {
    words,
    muscles: all(parts.map((part) => part.muscles)),
    patterns: all(parts.map((part) => part.patterns)),
    ...(region === undefined ? {} : { region }),
    kit: all<KitItem>(parts.map((part) => part.kit)),
    without: all(parts.map((part) => part.without)),
    standing: parts.some((part) => part.standing === true),
  };
}
