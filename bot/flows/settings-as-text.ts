import { type KitItem, kitItems } from '../../domain/catalogue/kit.ts';
import type { Room, Settings, SharedKit, WeeklySlot } from '../../domain/settings.ts';

/** A kit item, a number, and what follows a colon. */
export type KitLine = { readonly item: KitItem; readonly pieces: number; readonly rest: string };

/** A line each: `dumbbell 32`. */
export function kitText(kit: Room['kit']): string {
  return kitItems.flatMap((item) => (kit[item] === undefined ? [] : [`${item} ${kit[item]}`])).join('\n');
}

/** `dumbbell 32`, `32 dumbbells`, `kettlebell 16: Mill Room`. */
export function readKitLine(line: string): KitLine | undefined {
  const [, said = '', rest = ''] = /^([^:]*)(?::(.*))?$/.exec(line) ?? [];
  const [, front, name = '', back] = /^\s*(\d+)?\s*(.*?)\s*(\d+)?\s*$/.exec(said.toLowerCase()) ?? [];
  const number = front ?? back;
  const item = kitItems.find((each) => name === each || name === `${each}s` || name === `${each}es`);
  if (item === undefined || number === undefined || (front !== undefined && back !== undefined))
    return undefined;
  return { item, pieces: Number(number), rest: rest.trim() };
}

/** A line each: `kettlebell 16: Mill Room, Loft`. */
export function sharedKitText(shared: readonly SharedKit[]): string {
  return shared.map(({ item, pieces, rooms }) => `${item} ${pieces}: ${rooms.join(', ')}`).join('\n');
}

/** A slot by its name, or where two share it by day and time. */
export function slotLabel(slot: WeeklySlot, slots: readonly WeeklySlot[]): string {
  const same = slots.filter(({ name }) => name === slot.name);
  return same.length > 1 ? `${slot.weekday} ${slot.time}` : slot.name;
}

/** A line each: `Early birds: Early Circuit, Saturday Long`. */
export function habitsText({ slots, slotHabits }: Settings): string {
  return slotHabits
    .map(({ name, slotIds }) => {
      const named = slotIds.flatMap((id) => slots.filter((slot) => slot.id === id));
      return `${name}: ${named.map((slot) => slotLabel(slot, slots)).join(', ')}`;
    })
    .join('\n');
}
