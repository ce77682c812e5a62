import { expect, type Page } from '@playwright/test';
import { PAGES } from '@/components/shell/pages';
import { coveredStops, watchStops } from './covered';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago', now: '19:40' });

const SIZES = [
  { width: 360, height: 740 },
  { width: 740, height: 360 },
  // 400 % zoom (WCAG 2.2, 1.4.10).
  { width: 320, height: 256 },
];

const button = (name: string) => (page: Page) => page.getByRole('button', { name }).first().click();
const to = (hash: string) => (page: Page) =>
  page.evaluate((next) => {
    window.location.hash = next;
  }, hash);

type Place = {
  readonly name: string;
  readonly path: string;
  readonly there: string | RegExp;
  readonly open?: (page: Page) => Promise<unknown>;
};

const DIALOGS: readonly Place[] = [
  { name: 'what is in', path: '/', there: 'Done: it is in', open: button('Other jets') },
  { name: 'running late', path: '/', there: 'Round 2 starts now', open: button('Running late?') },
  { name: 'display', path: '/', there: 'Close', open: button('Display') },
  ...(
    [
      ['reading', 'Use this reading'],
      ['machine', 'Save machine'],
      ['event', 'Save event'],
      ['hours', 'Save hours'],
      ['forecast', 'Get the forecast'],
    ] as const
  ).map(([name, there]) => ({ name, path: '/', there, open: to(name) })),
];

/** The picture is drawn once it comes into sight, and then makes room for itself: before the keys come by. */
async function untilDrawn(page: Page): Promise<void> {
  const waiting = page.getByText('Drawing the night…');
  if (!(await waiting.first().isVisible())) return;
  await waiting.first().scrollIntoViewIfNeeded();
  await expect(waiting).toHaveCount(0);
  await page.evaluate(() => window.scrollTo(0, 0));
}

/** Goes through at every size. */
async function throughAll(page: Page, place: string): Promise<void> {
  for (const size of SIZES) {
    await page.setViewportSize(size);
    // The page hears of its new size a little later, and what then moves under a stop covers nothing.
    await page.waitForFunction(({ width, height }) => innerWidth === width && innerHeight === height, size);
    await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve))));
    const { stops, faults } = await coveredStops(page);
    const at = `${place} at ${size.width} x ${size.height}`;
    expect.soft(faults, at).toEqual([]);
    expect(stops, at).toBeGreaterThan(2);
  }
}

test('what a key comes to on any page is covered by nothing', async ({ night }) => {
  test.setTimeout(180_000);
  await watchStops(night);
  await night.goto('/');
  await expect(night.getByRole('heading', { name: 'Before you touch it' })).toBeAttached();
  // With what was just done at the foot of the screen.
  await night.getByRole('button', { name: 'This is my plan' }).click();
  await expect(night.getByRole('region', { name: 'Just done' })).toBeVisible();
  await throughAll(night, 'night');
  const others = PAGES.map(({ href }) => href).filter((href) => href !== '/');
  for (const path of ['/#track', '/#numbers', ...others, '/after', '/aside']) {
    await night.goto(path);
    await expect(night.getByRole('heading', { level: 1 })).toBeVisible();
    await night.waitForLoadState('networkidle');
    await untilDrawn(night);
    await throughAll(night, path);
  }
});

test('what a key comes to in any dialog is covered by nothing', async ({ night }) => {
  test.setTimeout(180_000);
  await watchStops(night);
  for (const { name, path, there, open } of DIALOGS) {
    await night.goto(path);
    await expect(night.getByRole('heading', { name: 'Before you touch it' })).toBeAttached();
    await open?.(night);
    await expect(night.locator('dialog[open]').getByRole('button', { name: there }).first()).toBeVisible();
    await throughAll(night, name);
  }
});
