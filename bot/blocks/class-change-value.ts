import { z } from 'zod';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { isWallTime } from '../../domain/calendar/wall-time.ts';
import type { ClassChange } from '../words/en/class-change-words.ts';
import { readJson } from './button-value.ts';

const wallTime = z.strictObject({ date: z.string(), time: z.string() }).refine(isWallTime);

const value = z.strictObject({
  classId: z.string().min(1),
  /** The start the class had when the form was made. */
  startsAt: z.iso.datetime(),
  change: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('cancel') }),
    z.strictObject({ kind: z.literal('on again') }),
    z.strictObject({
      kind: z.literal('move'),
      startsAt: wallTime,
      room: z.string().min(1).max(200).exactOptional(),
    }),
  ]),
});

/** A class, the start it had, and what is asked to be done to it. */
export type ClassChangeValue = Readonly<z.infer<typeof value>>;

export function printClassChange(
  { id, startsAt }: Pick<ScheduledClass, 'id' | 'startsAt'>,
  change: ClassChange,
): string {
  return JSON.stringify({ classId: id, startsAt: startsAt.instant, change });
}

/** Undefined for anything that this app did not make. */
export function readClassChange(text: string): ClassChangeValue | undefined {
  const read = value.safeParse(readJson(text));
  return read.success ? read.data : undefined;
}
