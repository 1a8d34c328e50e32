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

export type SettingsPart = (typeof settingsParts)[number];

/** A part, and within rooms, slots and own moves which one; an empty `key` is a new one. */
export type SettingsPlace = { readonly part: SettingsPart; readonly key?: string };
