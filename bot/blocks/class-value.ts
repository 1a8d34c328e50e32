import { z } from 'zod';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { readJson } from './button-value.ts';

/** A class, the start it had when the button was made, and what was chosen of it. */
export type ClassValue = {
  readonly classId: string;
  readonly startsAt: string;
  readonly choice?: string;
};

export function printClassValue(
  { id, startsAt }: Pick<ScheduledClass, 'id' | 'startsAt'>,
  choice?: string,
): string {
  return JSON.stringify([id, startsAt.instant, ...(choice === undefined ? [] : [choice])]);
}

const classValue = z.union([
  z.tuple([z.string().min(1), z.iso.datetime()]),
  z.tuple([z.string().min(1), z.iso.datetime(), z.string().max(200)]),
]);

/** Undefined for anything that this app did not make. */
export function readClassValue(value: string): ClassValue | undefined {
  const read = classValue.safeParse(readJson(value));
  if (!read.success) return undefined;
  const [classId, startsAt, choice] = read.data;
  return { classId, startsAt, ...(choice === undefined ? {} : { choice }) };
}
