import { type KitItem, kitItems } from '../catalogue/kit.ts';

const everyday: Readonly<Record<string, readonly KitItem[]>> = {
  db: ['dumbbell'],
  dbs: ['dumbbell'],
  kb: ['kettlebell'],
  kbs: ['kettlebell'],
  bar: ['barbell'],
  bars: ['barbell'],
  band: ['long band', 'mini band'],
  bands: ['long band', 'mini band'],
  'resistance band': ['long band'],
  'resistance bands': ['long band'],
  'loop band': ['mini band'],
  'loop bands': ['mini band'],
  strap: ['suspension strap'],
  straps: ['suspension strap'],
  benches: ['bench'],
  boxes: ['box'],
  'med ball': ['medicine ball'],
  'med balls': ['medicine ball'],
  rope: ['skipping rope'],
  ropes: ['skipping rope'],
  'jump rope': ['skipping rope'],
  'jump ropes': ['skipping rope'],
};

/** Words for kit as people type them, each with the pieces meant. */
export const kitPhrases: ReadonlyMap<string, readonly KitItem[]> = new Map<string, readonly KitItem[]>([
  ...Object.entries(everyday),
  ...kitItems.flatMap((item) => [[item, [item]] as const, [`${item}s`, [item]] as const]),
]);

/** A kit item as printed: the plural. */
export function kitName(item: KitItem): string {
  return item === 'bench' || item === 'box' ? `${item}es` : `${item}s`;
}
