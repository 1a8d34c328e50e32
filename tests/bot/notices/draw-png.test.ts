import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { drawWeekChart } from '../../../bot/blocks/week-picture.ts';
import { drawPng } from '../../../bot/notices/draw-png.ts';

const chart = {
  leastSets: 4,
  bars: [
    { name: 'lats', sets: 0 },
    { name: 'chest', sets: 2.5 },
    { name: 'quadriceps', sets: 20 },
  ],
};
const words = { title: 'Interval sets', least: 'at least 4', sets: String };

/** Width, height and the picture's bytes, from the published layout of PNG (ISO/IEC 15948). */
function readPng(png: Buffer) {
  const parts: Buffer[] = [];
  for (let at = 8; at < png.length; ) {
    const length = png.readUInt32BE(at);
    if (png.toString('latin1', at + 4, at + 8) === 'IDAT') parts.push(png.subarray(at + 8, at + 8 + length));
    at += 12 + length;
  }
  return {
    width: png.readUInt32BE(16),
    height: png.readUInt32BE(20),
    rows: inflateSync(Buffer.concat(parts)),
  };
}

describe('the chart as a picture', () => {
  test('is a PNG of the chart’s size', async () => {
    const png = await drawPng(drawWeekChart(chart, words));
    expect(png.subarray(0, 8)).toEqual(Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]));
    expect(readPng(png)).toMatchObject({ width: 720, height: 64 + 3 * 40 + 40 });
  });

  test('shows its text: the same picture without letters is another one', async () => {
    const svg = drawWeekChart(chart, words);
    const bare = svg.replaceAll(/<text[^>]*>[^<]*<\/text>/g, '');
    const foreign = svg.replace('lats', 'lots');
    const [drawn, without, other] = await Promise.all([svg, bare, foreign].map(drawPng));
    expect(drawn === undefined || without === undefined || other === undefined).toBe(false);
    expect(readPng(drawn ?? Buffer.of()).rows).not.toEqual(readPng(without ?? Buffer.of()).rows);
    expect(readPng(drawn ?? Buffer.of()).rows).not.toEqual(readPng(other ?? Buffer.of()).rows);
  });

  test('has a bar for each number, the longest for the most, and none for none', () => {
    const widths = [...drawWeekChart(chart, words).matchAll(/<rect x="150" [^>]*width="(\d+)"/g)].map(
      ([, width]) => Number(width),
    );
    expect(widths).toEqual([0, Math.round((2.5 / 20) * 510), 510]);
  });
});
