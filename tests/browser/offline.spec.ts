import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { test } from './test';
import { answerPlaces } from './weather-answers';

/** Every page rendered at build time, as the build itself lists them. */
function builtPages(): readonly string[] {
  const hashes = JSON.parse(readFileSync(join('.next', 'inline-script-hashes.json'), 'utf8'));
  return Object.keys(hashes).filter((path) => !path.startsWith('/_'));
}

async function visitOnceAndCut(page: Page): Promise<void> {
  await page.goto('/');
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    if (active?.state !== 'activated')
      await new Promise((done) => active?.addEventListener('statechange', done));
  });
  await page.context().setOffline(true);
}

test('after one visit every page opens and reloads without a network', async ({ page }) => {
  await visitOnceAndCut(page);
  const pages = builtPages();
  expect(pages).toContain('/');
  for (const path of pages) {
    await page.goto(path);
    await expect(page.locator('h1').first()).toBeVisible();
    await page.reload();
    await expect(page.locator('h1').first()).toBeVisible();
  }
});

test('a page kept by the worker still carries its content security policy and breaks none of it', async ({
  page,
}) => {
  const violations: string[] = [];
  page.on('console', (message) => {
    if (/Content Security Policy/i.test(message.text())) violations.push(message.text());
  });
  await visitOnceAndCut(page);
  for (const path of builtPages()) {
    const answer = await page.goto(path);
    const policy = answer?.headers()['content-security-policy'] ?? '';
    const scripts = policy.split(';').find((part) => part.trim().startsWith('script-src')) ?? '';
    expect(scripts).toContain("'sha256-");
    expect(scripts).not.toMatch(/unsafe-inline|unsafe-eval/);
    await page.waitForTimeout(300);
  }
  expect(violations).toEqual([]);
});

test('an address without a page says so and breaks no rule about scripts', async ({ page }) => {
  const violations: string[] = [];
  page.on('console', (message) => {
    if (/Content Security Policy/i.test(message.text())) violations.push(message.text());
  });
  const answer = await page.goto('/no-page-here');
  expect(answer?.status()).toBe(404);
  await expect(page.locator('h1').first()).toBeVisible();
  expect(violations).toEqual([]);
});

test.describe('before the first round', () => {
  test.use({ now: '15:00' });
  test('after the cut a night is planned by hand, and edits survive', async ({ page }) => {
    await visitOnceAndCut(page);
    await page.reload();
    await page.getByRole('link', { name: 'Start my own night' }).first().click();
    const dialog = page.getByRole('dialog');
    const other = dialog.getByRole('button', { name: 'Another machine' });
    await expect(other.or(dialog.getByRole('textbox', { name: 'Main jet', exact: true }))).toBeVisible();
    if (await other.isVisible()) await other.click();
    for (const [name, text] of Object.entries({
      Name: 'Blue 600',
      'Main jet': '410',
      'Jets in the box': '400x3 410x3 420x3 430x3',
      Temperature: '14',
      Elevation: '1150',
    }))
      await dialog.getByRole('textbox', { name, exact: true }).fill(text);
    await dialog.getByRole('button', { name: 'Save machine' }).click();
    await dialog.getByRole('textbox', { name: 'Name of the event' }).fill('Cut off');
    await dialog.getByRole('textbox', { name: 'Elevation' }).fill('1150');
    await dialog.getByRole('textbox', { name: 'First at' }).fill('19:00');
    await dialog.getByRole('textbox', { name: 'Every' }).fill('40');
    await dialog.getByRole('textbox', { name: 'How many' }).fill('6');
    await dialog.getByRole('textbox', { name: 'Each lasting' }).fill('10');
    await dialog.getByRole('button', { name: 'Save event' }).click();
    const hours = dialog.locator('input[name^="rows."][name$=".temperature"]');
    await hours.first().waitFor();
    await hours.first().fill('20');
    await hours.nth((await hours.count()) - 1).fill('-5');
    await dialog.getByRole('button', { name: 'Save hours' }).click();
    const call = page.getByRole('region', { name: 'The call' });
    await expect(call).toContainText(/Start on|No swap|Put in/);
    await page.reload();
    await expect(page.getByRole('heading', { name: 'Cut off' })).toBeVisible();
    await expect(call).toContainText(/Start on|No swap|Put in/);
    await expect(page.getByRole('region', { name: 'Weather', exact: true })).toContainText('none');
  });
});

test('after the cut the last forecast stays, with its age, and is asked for again when the signal is back', async ({
  page,
}) => {
  await answerPlaces(page);
  await page.goto('/');
  await page.getByRole('link', { name: 'Get the forecast' }).click();
  await page.getByRole('button', { name: 'Get the forecast' }).click();
  const weather = page.getByRole('region', { name: 'Weather', exact: true });
  await expect(weather).toContainText('Open-Meteo');
  await visitOnceAndCut(page);
  await page.reload();
  await expect(weather).toContainText(/fresh.*Open-Meteo, asked for/);
  await expect(weather).toContainText('There is no signal');
  await page.context().setOffline(false);
  await expect(weather).not.toContainText('There is no signal', { timeout: 20_000 });
});

test('what the browser threw away or spoiled since is there again after the next visit', async ({ page }) => {
  const visit = async () => {
    await page.goto('/');
    await page.evaluate(async () => {
      const { active } = await navigator.serviceWorker.ready;
      if (active?.state !== 'activated')
        await new Promise((done) => active?.addEventListener('statechange', done));
    });
  };
  /** Every kept file, by its address, and how long it is. */
  const kept = () =>
    page.evaluate(async () => {
      const lengths: Record<string, number> = {};
      for (const name of await caches.keys()) {
        const cache = await caches.open(name);
        for (const key of await cache.keys())
          lengths[key.url] = (await (await cache.match(key))?.arrayBuffer())?.byteLength ?? -1;
      }
      return lengths;
    });
  await visit();
  const before = await kept();
  expect(Object.keys(before).length).toBeGreaterThan(50);
  await page.evaluate(async () => {
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      const keys = await cache.keys();
      for (const [i, key] of keys.entries()) {
        if (i % 3 === 0) await cache.delete(key);
        // Half of it, as after a crash while it was written; and another answer of the same length.
        const text = (await (await cache.match(key))?.text()) ?? '';
        if (i % 3 === 1) await cache.put(key, new Response(text.slice(0, text.length / 2)));
        if (i % 7 === 2) await cache.put(key, new Response('x'.repeat(text.length)));
      }
    }
  });
  expect(Object.keys(await kept()).length).toBeLessThan(0.8 * Object.keys(before).length);
  // The page itself may be among what is spoiled: what heals it is the worker.
  await page.goto('/');
  await expect.poll(kept, { timeout: 30_000 }).toEqual(before);
  await page.context().setOffline(true);
  for (const path of builtPages()) {
    await page.goto(path);
    await expect(page.locator('h1').first()).toBeVisible();
  }
});
