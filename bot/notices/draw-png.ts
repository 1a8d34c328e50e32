import { fileURLToPath } from 'node:url';
import { renderAsync } from '@resvg/resvg-js';

/** Shipped with the app: a machine without fonts would draw no text, and say nothing of it. */
const fontFile = fileURLToPath(import.meta.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'));

/** An SVG with its text in DejaVu Sans as PNG, away from the event loop. */
export async function drawPng(svg: string): Promise<Buffer> {
  const drawn = await renderAsync(svg, {
    font: { fontFiles: [fontFile], loadSystemFonts: false, defaultFontFamily: 'DejaVu Sans' },
  });
  return drawn.asPng();
}
