import { z } from 'zod';

/** A row without its empty columns, so that what is absent in SQL is absent in the value. */
export function present(row: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(row).filter(([, value]) => value !== null));
}

/** A text column that holds JSON of this shape. */
export function jsonOf<Shape extends z.ZodType>(shape: Shape) {
  return z
    .string()
    .transform((text, context): unknown => parseJson(text, context))
    .pipe(shape);
}

function parseJson(text: string, context: z.RefinementCtx): unknown {
  try {
    return JSON.parse(text);
  } catch {
    context.addIssue({ code: 'custom', message: 'not JSON' });
    return z.NEVER;
  }
}

/** Milliseconds since 1970 of an ISO 8601 instant. */
export function millisecondsOf(instant: string): number {
  const milliseconds = Date.parse(instant);
  if (Number.isNaN(milliseconds)) throw new Error(`Not an instant: ${instant}`);
  return milliseconds;
}

/** Throws where an update met no row: the caller holds an id that storage does not know. */
export function assertUpdated(result: { readonly numUpdatedRows: bigint }, what: string): void {
  if (result.numUpdatedRows === 0n) throw new Error(`No such ${what} to change.`);
}
