/** Kit a class may use, counted in single pieces: a pair of dumbbells is two pieces of `dumbbell`. */
export const kitItems = [
  'dumbbell',
  'kettlebell',
  'barbell',
  'plate',
  'long band',
  'mini band',
  'suspension strap',
  'bench',
  'step',
  'box',
  'medicine ball',
  'slam ball',
  'sandbag',
  'slider',
  'chair',
  'skipping rope',
  'pull-up bar',
  'mat',
] as const;

export type KitItem = (typeof kitItems)[number];

/** What one person needs for a move, in single pieces; a pair of straps, sliders or dumbbells is 2. */
export type KitNeed = { readonly item: KitItem; readonly pieces: number };
