const entities: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>' };

/**
 * The draft as kept, which all spans count in: entities decoded, line ends and no-break spaces normalised,
 * and the zero-width spaces gone that stand in a text copied from the app's own messages; nothing else.
 */
export function keepText(text: string): string {
  return text
    .replace(/&(?:amp|lt|gt);/g, (entity) => entities[entity] ?? entity)
    .replace(/\r\n?|\u2028|\u2029/g, '\n')
    .replace(/[\u00a0\u202f\u2007]/g, ' ')
    .replaceAll('\u200b', '');
}
