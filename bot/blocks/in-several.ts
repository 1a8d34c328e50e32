import type { Message } from '../handling.ts';
import type { Words } from '../words/words.ts';
import { limits, packLines } from './limits.ts';

/** Room for the title and the number of the page. */
const headLength = 200;

/** Lines as one message, or as several in order where one would not hold them; nothing is cut. */
export function inSeveral(title: string, lines: readonly string[], words: Words): readonly Message[] {
  const pages = packLines(lines, limits.topLevelText - headLength);
  if (pages.length <= 1) return [{ text: [title, ...pages].filter((part) => part !== '').join('\n') }];
  return pages.map((page, place) => ({
    text: `${title} ${words.asks.page(place + 1, pages.length)}`.trim().concat('\n', page),
  }));
}
