/** Whether two parts of plans say the same: they may differ in spans, ids and the order of their fields. */
export function samePlain(a: unknown, b: unknown): boolean {
  return plainForm(a) === plainForm(b);
}

function plainForm(value: unknown): string | undefined {
  return JSON.stringify(value, (key, part: unknown) =>
    key === 'id' || key === 'span' ? undefined : inOrder(part),
  );
}

function inOrder(part: unknown): unknown {
  if (typeof part !== 'object' || part === null || Array.isArray(part)) return part;
  return Object.fromEntries(Object.entries(part).toSorted(([a], [b]) => (a < b ? -1 : 1)));
}
