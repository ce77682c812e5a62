import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page, test } from '@playwright/test';

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
