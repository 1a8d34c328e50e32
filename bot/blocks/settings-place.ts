import { z } from 'zod';
import { type SettingsPlace, settingsParts } from '../flows/settings-part.ts';

const place = z.strictObject({ part: z.enum(settingsParts), key: z.string().max(200).exactOptional() });

export function printSettingsPlace(value: SettingsPlace): string {
  return JSON.stringify(value);
}

/** Undefined for anything that this app did not make. */
export function readSettingsPlace(text: string): SettingsPlace | undefined {
  try {
    const read = place.safeParse(JSON.parse(text));
    return read.success ? read.data : undefined;
  } catch {
    return undefined;
  }
}
