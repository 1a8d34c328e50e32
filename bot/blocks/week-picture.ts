import { escapeText } from './escape.ts';

/** Pixels. */
const size = { width: 720, top: 64, row: 40, bar: 22, names: 150, right: 60, bottom: 40 } as const;
/** One neutral tint: a bar is no mark. */
const tint = { ink: '#1f2328', bar: '#6b7f99', line: '#59636e', ground: '#ffffff' } as const;

/** Keeps a number readable where the line runs behind it. */
const halo = `stroke="${tint.ground}" stroke-width="5" paint-order="stroke"`;

/** Bars from the top down, each with its name. */
export type NamedBars = readonly { readonly name: string; readonly sets: number }[];

/** The week's bar chart as SVG: a name, a bar and its number a row, and a line at the least wanted. */
export function drawWeekChart(
  { bars, leastSets }: { readonly bars: NamedBars; readonly leastSets: number },
  words: {
    readonly title: string;
    readonly least: string;
    readonly sets: (sets: number) => string;
  },
): string {
  const most = Math.max(leastSets, ...bars.map(({ sets }) => sets));
  const widthOf = (sets: number) => (sets / most) * (size.width - size.names - size.right);
  const height = size.top + bars.length * size.row + size.bottom;
  const leastX = Math.round(size.names + widthOf(leastSets));
  const rows = bars.map(({ name, sets }, place) => {
    const y = size.top + place * size.row;
    const width = Math.round(widthOf(sets));
    const textY = y + size.bar - 5;
    return [
      `<text x="${size.names - 10}" y="${textY}" text-anchor="end">${escapeText(name)}</text>`,
      `<rect x="${size.names}" y="${y}" width="${width}" height="${size.bar}" fill="${tint.bar}"/>`,
      `<text x="${size.names + width + 8}" y="${textY}" ${halo}>${words.sets(sets)}</text>`,
    ].join('');
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size.width}" height="${height}" font-family="DejaVu Sans" font-size="17" fill="${tint.ink}">`,
    `<rect width="${size.width}" height="${height}" fill="${tint.ground}"/>`,
    `<text x="16" y="36" font-size="20">${escapeText(words.title)}</text>`,
    `<path d="M${leastX} ${size.top - 8}V${height - size.bottom}" stroke="${tint.line}" stroke-width="2" stroke-dasharray="6 4"/>`,
    ...rows,
    `<text x="${leastX}" y="${height - 14}" text-anchor="middle" font-size="15">${escapeText(words.least)}</text>`,
    '</svg>',
  ].join('');
}
