import { expect, type Page } from '@playwright/test';

/** Keeps by how much the page moves what stands there, and what that was. */
export function keepMoves(page: Page) {
  return page.addInitScript(() => {
    const moves: { by: number; what: string[] }[] = [];
    Object.assign(window, { moves });
    const place = ({ x, y, width, height }: DOMRectReadOnly) => `${x},${y} ${width}×${height}`;
    new PerformanceObserver((list) => {
      // A layout shift has a value and sources; the library of types knows neither.
      for (const entry of list.getEntries())
        moves.push({
          by: Reflect.get(entry, 'value'),
          what: Reflect.get(entry, 'sources').map(
            (source: { node: Node | null; previousRect: DOMRectReadOnly; currentRect: DOMRectReadOnly }) =>
              `${source.node?.nodeName} "${source.node?.textContent?.slice(0, 60)}" ${place(source.previousRect)} to ${place(source.currentRect)}`,
          ),
        });
    }).observe({ type: 'layout-shift', buffered: true });
  });
}

/** What moved by more than a thousandth of the screen in all: nothing. */
export async function expectNothingMoved(page: Page) {
  // What was just changed has been drawn by then.
  await page.evaluate(
    () => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))),
  );
  const moves: { by: number; what: string[] }[] = await page.evaluate(() => Reflect.get(window, 'moves'));
  const sum = moves.reduce((total, { by }) => total + by, 0);
  expect(sum, JSON.stringify(moves)).toBeLessThan(0.001);
}
