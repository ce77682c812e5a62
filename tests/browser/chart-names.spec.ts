import { expect, type Page } from '@playwright/test';
import { NIGHT_STATES } from './night-states';
import { openState } from './open-state';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago' });
test.setTimeout(240_000);

const SIZES = [
  { width: 360, height: 740 },
  { width: 280, height: 653 },
  { width: 1280, height: 800 },
] as const;
/** Those whose steps or curve stand in other places. */
const STATES = ['ahead', 'due', 'late', 'missed', 'lean', 'rich', 'steep', 'halves', 'sixty'];

type Seen = { readonly names: readonly string[]; readonly faults: readonly string[] };

/** Every name in the pictures of the night: on which line it lies, whom it touches, where it is cut. */
function seen(page: Page): Promise<Seen> {
  return page.evaluate(() => {
    type Spot = { readonly x: number; readonly y: number };
    const faults: string[] = [];
    const main = [...document.querySelectorAll<SVGSVGElement>('svg.recharts-surface')].at(-1);
    if (main === undefined) return { names: [], faults: ['no picture'] };
    /** Letters take less of the height than their line does. */
    const boxOf = (text: Element) => {
      const { left, right, top, bottom, height } = text.getBoundingClientRect();
      return { left, right, top: top + 0.24 * height, bottom: bottom - 0.2 * height };
    };
    const spotsOf = (path: SVGPathElement): readonly Spot[] => {
      const [length, matrix] = [path.getTotalLength(), path.getScreenCTM()];
      if (matrix === null) return [];
      return Array.from({ length: Math.ceil(length) + 1 }, (_, at) => {
        const { x, y } = path.getPointAtLength(at).matrixTransform(matrix);
        return { x, y };
      });
    };
    const lines = [
      ...main.querySelectorAll<SVGPathElement>('path.recharts-line-curve, path[class*="steps"]'),
    ].map(spotsOf);
    const named = [
      ...main.querySelectorAll('text[class*="stairName"], text[class*="leanWord"], text[class*="richWord"]'),
    ].map((text) => ({ words: text.textContent ?? '', box: boxOf(text) }));
    const frame = main.getBoundingClientRect();
    for (const [i, { words, box }] of named.entries()) {
      if (
        lines.some((spots) =>
          spots.some(({ x, y }) => x > box.left && x < box.right && y > box.top && y < box.bottom),
        )
      )
        faults.push(`${words} lies on a line`);
      if (box.left < frame.left || box.right > frame.right) faults.push(`${words} is cut`);
      for (const other of named.slice(i + 1))
        if (
          box.left < other.box.right &&
          other.box.left < box.right &&
          box.top < other.box.bottom &&
          other.box.top < box.bottom
        )
          faults.push(`${words} lies on ${other.words}`);
    }
    const along = (axis: 'xAxis' | 'yAxis', start: 'left' | 'top', end: 'right' | 'bottom', air: number) => {
      const ticks = [...main.querySelectorAll(`.recharts-${axis} text`)]
        .map((text) => ({ words: text.textContent ?? '', box: boxOf(text) }))
        .sort((a, b) => a.box[start] - b.box[start]);
      for (const [i, tick] of ticks.entries()) {
        const next = ticks[i + 1];
        if (next !== undefined && next.box[start] - tick.box[end] < air)
          faults.push(`${tick.words} is too near to ${next.words}`);
        if (tick.box.left < frame.left - 1 || tick.box.right > frame.right + 1)
          faults.push(`${tick.words} is cut`);
      }
      if (ticks.length < 2) faults.push(`nothing is named on ${axis}`);
    };
    along('xAxis', 'left', 'right', 8);
    along('yAxis', 'top', 'bottom', 0);
    return { names: named.map(({ words }) => words.replaceAll('\u00a0', ' ')), faults };
  });
}

/** The names of old jets in the figure: none out of its drawing, none on the line of the plan. */
function oldNames(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('section[aria-label="The night"] [class*="ghostName"]')].flatMap((name) => {
      const room = name.parentElement?.getBoundingClientRect();
      const cell = name.closest('td')?.getBoundingClientRect();
      const { left, right, top } = name.getBoundingClientRect();
      // What has no room stands on a second line, unseen.
      if (room === undefined || cell === undefined || top > room.bottom - 2) return [];
      const lines = [...document.querySelectorAll('section[aria-label="The night"] line[class*="_line"]')];
      const near = lines
        .map((line) => line.getBoundingClientRect())
        .filter((line) => line.top < room.bottom && line.bottom > room.top);
      const isOn = near.some((line) => line.right > left && line.left < right);
      return isOn || left < cell.left || right > cell.right ? [name.textContent ?? ''] : [];
    }),
  );
}

async function look(page: Page, what: string): Promise<Seen> {
  await page.getByRole('heading', { name: 'The night in one picture' }).scrollIntoViewIfNeeded();
  await expect(page.locator('.recharts-line-curve').last()).toBeAttached();
  const shown = await seen(page);
  expect(shown.faults, what).toEqual([]);
  expect(await oldNames(page), what).toEqual([]);
  return shown;
}

for (const locale of ['en-GB', 'en-US'])
  test.describe(`the clock of ${locale}`, () => {
    test.use({ locale });
    for (const state of NIGHT_STATES.filter(({ name }) => STATES.includes(name)))
      test(`no line goes through a name in the picture of "${state.name}"`, async ({ night }) => {
        await openState(night, state);
        for (const size of SIZES) {
          await night.setViewportSize(size);
          for (const hours of ['All hours', 'The runs']) {
            await night.getByRole('heading', { name: 'The night in one picture' }).scrollIntoViewIfNeeded();
            await night.getByText(hours, { exact: true }).click();
            const { names } = await look(night, `${size.width}, ${hours}`);
            // What is to be put in is named, if only by its jet.
            const swap = await night.locator('section[aria-label="The night"] strong').allTextContents();
            for (const act of swap) expect(names.join('; '), act).toContain(/\d[\d.]*/.exec(act)?.[0] ?? act);
            expect(names).toEqual(expect.arrayContaining(['LEAN', 'RICH']));
          }
        }
        await night.emulateMedia({ media: 'print' });
        await night.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
        await look(night, 'paper');
      });
  });
