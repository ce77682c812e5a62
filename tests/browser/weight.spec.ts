import { expect } from '@playwright/test';
import { kilobytes, scrollThrough, type Transfer, watchTransfers } from '@/tests/support/transfers';
import { test } from './watched-page';

/** Thousand bytes over the wire, headers with them. */
const FIRST_SCRIPT_KB = 135;
const EVERYTHING_KB = 325;
/** The chart library, asked for when the picture comes near the screen. */
const CHART_KB = 80;
const REQUESTS = 25;
/** The one face, all weights together. */
const FACE_KB = 30;

/** What weighs what, heaviest first: for whoever has to find out what grew. */
function scales(transfers: readonly Transfer[]): string {
  const lines = transfers
    .toSorted((a, b) => b.bytes - a.bytes)
    .map(({ url, kind, first, bytes }) =>
      [(bytes / 1000).toFixed(1).padStart(7), kind, first ? 'first' : 'later', new URL(url).pathname].join(
        ' ',
      ),
    );
  return [`${transfers.length} requests, ${kilobytes(transfers).toFixed(1)} kB`, ...lines].join('\n');
}

test('a first visit to the night page stays light, and the chart waits until it is near', async ({
  night,
  baseURL,
}) => {
  const transfers = await watchTransfers(night);
  await night.goto('/');
  await expect(night.getByRole('heading', { name: 'The night in one picture' })).toBeAttached();
  await night.waitForLoadState('networkidle');
  const page = transfers();
  const first = page.filter(({ kind, first }) => first && kind === 'Script');
  expect(first.length).toBeGreaterThan(0);
  expect(kilobytes(first), scales(first)).toBeLessThanOrEqual(FIRST_SCRIPT_KB);
  // The browser does not tell the page's listener how large a worker's file was.
  const planner = page.filter(({ bytes }) => bytes === 0);
  expect(planner.map(({ url }) => url.split('/').at(-1))).toEqual(['planner.js']);
  const answer = await night.request.get(planner[0]!.url, { headers: { 'accept-encoding': 'br' } });
  const plannerKb = Number(answer.headers()['content-length']) / 1000;
  expect(plannerKb).toBeGreaterThan(10);
  expect(kilobytes(page) + plannerKb, scales(page)).toBeLessThanOrEqual(EVERYTHING_KB);

  await scrollThrough(night);
  // So fast a thumb may be past it before it is seen to come near.
  await night.getByRole('heading', { name: 'The night in one picture' }).scrollIntoViewIfNeeded();
  await expect(night.locator('.recharts-surface').first()).toBeVisible();
  await night.waitForLoadState('networkidle');
  const all = transfers();
  const chart = all.slice(page.length);
  expect(chart.filter(({ kind }) => kind === 'Script').length).toBeGreaterThan(0);
  expect(kilobytes(chart), scales(chart)).toBeLessThanOrEqual(CHART_KB);
  expect(all.length, scales(all)).toBeLessThanOrEqual(REQUESTS);
  expect(all.filter(({ bytes }) => bytes === 0)).toEqual(planner);
  expect(all.filter(({ url }) => new URL(url).origin !== baseURL)).toEqual([]);
  expect(kilobytes(all.filter(({ kind }) => kind === 'Font'))).toBeLessThanOrEqual(FACE_KB);
});
