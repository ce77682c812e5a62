import { expect, type Page } from '@playwright/test';
import { instantOf } from './clock';
import { test } from './test';
import { test as watched } from './watched-page';

const NOON = '12:00';
const TICK_MS = 30_000;

declare global {
  interface Window {
    /** What the page has asked of its planning worker; while `held`, it waits on the way there. */
    planned: { asked: number; held: boolean; readonly waiting: (() => void)[] };
  }
}

/** Counts what goes to the worker, and can hold it up. */
function watchPlanner(): void {
  const planned: Window['planned'] = { asked: 0, held: false, waiting: [] };
  window.planned = planned;
  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (this: Worker, task: { readonly request?: unknown }) {
    if (task.request !== undefined) planned.asked += 1;
    const send = () => Reflect.apply(post, this, [task]);
    if (planned.held) planned.waiting.push(send);
    else send();
  };
}

const asked = (page: Page) => page.evaluate(() => window.planned.asked);
const call = (page: Page) => page.getByRole('region', { name: 'The call' });
const inNow = (page: Page) => page.getByRole('region', { name: 'In now', exact: true });
const rows = (page: Page) => page.getByRole('table', { name: /^Jets for every run/ });

/** The page's clock goes on by half a minute each time, and the page hears of it. */
function ticks(page: Page, from: number, count: number): Promise<void> {
  return page.evaluate(
    async ([start, steps, step]) => {
      for (let tick = 1; tick <= steps; tick += 1) {
        Date.now = () => start + tick * step;
        document.dispatchEvent(new Event('visibilitychange'));
        await new Promise((rendered) => setTimeout(rendered));
      }
    },
    [from, count, TICK_MS] as const,
  );
}

/** Gives back what changed in the charts since the last time: the class of every node, one for each change. */
async function watchCharts(page: Page): Promise<() => Promise<readonly string[]>> {
  const chart = page.locator('.recharts-surface').first();
  await page.getByRole('heading', { name: 'The night in one picture' }).scrollIntoViewIfNeeded();
  await expect(chart).toBeAttached();
  const changes = await page.evaluateHandle(() => {
    const seen: string[] = [];
    const watch = new MutationObserver((records) => {
      for (const { target } of records) seen.push(target instanceof Element ? target.outerHTML : 'text');
    });
    for (const svg of document.querySelectorAll('.recharts-wrapper'))
      watch.observe(svg, { attributes: true, characterData: true, childList: true, subtree: true });
    return seen;
  });
  return () => changes.evaluate((seen) => seen.splice(0));
}

watched.describe('a night that is planned apart from the page', () => {
  watched.use({ now: NOON });

  watched('is not planned again while nothing but the clock moves', async ({ night }) => {
    await night.addInitScript(watchPlanner);
    await night.goto('/');
    await expect(call(night)).toBeVisible();
    const changed = await watchCharts(night);
    const first = await asked(night);
    expect(first).toBeGreaterThan(0);
    await changed();
    // The demo's hours are typed, and such hours count anew with every quarter of an hour.
    await ticks(night, instantOf(NOON), 29);
    await expect(night.getByRole('row', { name: /^Now 12:14/ })).toBeVisible();
    expect(await asked(night)).toBe(first);
    expect(await changed()).toEqual([]);
    await ticks(night, instantOf(NOON) + 29 * TICK_MS, 1);
    await expect(night.getByRole('row', { name: /^Now 12:15/ })).toBeVisible();
    await ticks(night, instantOf(NOON) + 30 * TICK_MS, 1);
    await expect(night.getByText('12:15').first()).toBeVisible();
    expect(await asked(night)).toBe(first + 1);
  });

  watched('moves one line in each chart for whoever walks the hours', async ({ night }) => {
    await night.goto('/');
    const changed = await watchCharts(night);
    const slider = night.getByRole('slider', { name: 'Walk the hours' });
    await slider.press('ArrowRight');
    await expect(night.locator('.recharts-surface line[class*="cursor"]')).toHaveCount(2);
    await changed();
    for (let step = 0; step < 5; step += 1) await slider.press('ArrowRight');
    const lines = await changed();
    expect(lines.length).toBeGreaterThan(0);
    expect(lines.length).toBeLessThanOrEqual(20);
    expect(lines.filter((html) => !/^<line class="[^"]*cursor/.test(html))).toEqual([]);
  });
});

watched.describe('a night that changed', () => {
  watched.use({ now: '19:40' });

  watched('stands as it was until the new plan is there, and then all of it is new', async ({ night }) => {
    await night.addInitScript(watchPlanner);
    await night.goto('/');
    await expect(inNow(night)).toContainText('410 400 410');
    const before = await rows(night).textContent();
    await night.evaluate(() => {
      window.planned.held = true;
    });
    const first = await asked(night);
    await night.getByRole('button', { name: 'Done: 420 410 420 is in' }).click();
    // What follows from it is planned before it is kept, and once more from what was kept.
    await expect.poll(() => asked(night)).toBe(first + 1);
    await night.evaluate(() => {
      for (const send of window.planned.waiting.splice(0)) send();
    });
    await expect.poll(() => asked(night)).toBe(first + 2);
    await expect(night.getByText('420 410 420 is in.')).toBeVisible();
    await expect(inNow(night)).toContainText('410 400 410');
    expect(await rows(night).textContent()).toBe(before);
    await night.evaluate(() => {
      window.planned.held = false;
      for (const send of window.planned.waiting.splice(0)) send();
    });
    await expect(inNow(night)).toContainText('420 410 420');
    expect(await rows(night).textContent()).not.toBe(before);
    expect(night.workers().map((worker) => new URL(worker.url()).pathname)).toEqual([
      expect.stringMatching(/^\/_next\/static\/\w+\/planner\.js$/),
    ]);
  });
});

/** Ways in which a page comes to have no worker that plans. */
const HINDRANCES: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  'the browser has none': (page) => page.addInitScript(() => Reflect.deleteProperty(window, 'Worker')),
  'its file does not come': (page) => page.route('**/planner.js', (route) => route.abort()),
  'its file is spoilt': (page) =>
    page.route('**/planner.js', (route) =>
      route.fulfill({ contentType: 'text/javascript', body: 'throw new Error("spoilt")' }),
    ),
};

test.describe('where no worker can plan', () => {
  test.use({ now: '19:40', serviceWorkers: 'block' });

  for (const [name, hinder] of Object.entries(HINDRANCES))
    test(`the page plans in place: ${name}`, async ({ page }) => {
      await hinder(page);
      await page.goto('/');
      await page.getByRole('button', { name: 'Done: 420 410 420 is in' }).click();
      await expect(inNow(page)).toContainText('420 410 420');
      await expect(call(page)).toContainText('420 410 420 holds');
    });
});

test('without a network the planner comes from what was kept', async ({ page }) => {
  await page.goto('/');
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    if (active?.state !== 'activated')
      await new Promise((done) => active?.addEventListener('statechange', done));
  });
  await page.context().setOffline(true);
  await page.addInitScript(watchPlanner);
  await page.goto('/');
  await expect(call(page)).toBeVisible();
  expect(await asked(page)).toBeGreaterThan(0);
  expect(page.workers().map((worker) => worker.url())).toEqual([expect.stringContaining('/planner.js')]);
});
