/** A text cut inside a character can't be sent: what is left of that one becomes U+FFFD, at any depth of plain data. */
function wellFormed(value: unknown): unknown {
  if (typeof value === 'string') return value.toWellFormed();
  if (Array.isArray(value)) return value.map(wellFormed);
  return isPlain(value) ? wellFormedParts(value) : value;
}

export function wellFormedParts(parts: object): Record<string, unknown> {
  return Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, wellFormed(part)]));
}

function isPlain(value: unknown): value is object {
  return typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;
}
