import { z } from 'zod';

/** What a button carries: the plan and version it was made on, and where it proposes one, the edit. */
const buttonValue = z.strictObject({
  plan: z.string().min(1).max(80),
  version: z.int().min(1),
  edit: z.string().max(1_500).exactOptional(),
  /** A stretch of the draft's text to put `name` in the place of. */
  at: z
    .tuple([z.int().min(0), z.int().min(0)])
    .refine(([start, end]) => start <= end)
    .exactOptional(),
  name: z.string().max(200).exactOptional(),
  comment: z.string().max(80).exactOptional(),
  /** Notice key of the message the button stands on, so that it can be updated. */
  on: z.string().max(255).exactOptional(),
});

export type ButtonValue = Readonly<z.infer<typeof buttonValue>>;

export function printButtonValue(value: ButtonValue): string {
  return JSON.stringify(value);
}

/** Undefined for anything that this app did not make. */
export function readButtonValue(text: string): ButtonValue | undefined {
  const read = buttonValue.safeParse(readJson(text));
  return read.success ? read.data : undefined;
}

/** Undefined for text that is no JSON. */
export function readJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
