import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** Higher than the longest form. */
const highEnough = 8_000;

/**
 * The serious and critical faults that axe-core finds in the page, each with the first element it names. A label
 * that is scrolled away counts as none there: an open form is laid out whole while it looks.
 */
export async function seriousFaults(page: Page): Promise<readonly string[]> {
  const size = page.viewportSize() ?? { width: 390, height: 844 };
  await page.setViewportSize({ width: size.width, height: highEnough });
  await page.evaluate(axe.source);
  const found: readonly string[] = await page.evaluate(async () => {
    const boxes = [...document.querySelectorAll<HTMLElement>('.dialog, .dialog form, .dialog-body')];
    for (const { style } of boxes) Object.assign(style, { maxHeight: 'none', overflow: 'visible' });
    const results = await Reflect.get(window, 'axe').run(document);
    for (const box of boxes) box.removeAttribute('style');
    return results.violations
      .filter((each: { impact: string }) => each.impact === 'serious' || each.impact === 'critical')
      .map(
        (each: { id: string; nodes: readonly { html: string }[] }) => `${each.id}: ${each.nodes[0]?.html}`,
      );
  });
  await page.setViewportSize(size);
  return found;
}
