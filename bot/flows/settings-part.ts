/** The parts that settings are changed in, one form or list each. */
export const settingsParts = [
  'studio',
  'roles',
  'rooms',
  'shared kit',
  'slots',
  'habits',
  'times',
  'checks',
  'dose',
  'own moves',
  'retention',
  'help',
] as const;

/** The choice of no user group for a role. */
export const noGroup = 'none';

/** Where nothing makes no sense: a day to keep things, a length of a class, a factor. */
export function leastOf(block: string): number {
  if (block.startsWith('retention.') || block === 'capacity' || block === 'people' || block === 'area')
    return 1;
  if (block === 'slotMinutes' || block === 'minutes') return 5;
  return block === 'transitions.factor' ? 0.1 : 0;
}

export type SettingsPart = (typeof settingsParts)[number];

/** A part, and within rooms, slots and own moves which one; an empty `key` is a new one. */
export type SettingsPlace = { readonly part: SettingsPart; readonly key?: string };
