import { expect, type Page } from '@playwright/test';
import { instantOf } from './clock';
import type { NightState } from './night-states';

/** The page in a state of the night, at rest: its answer and all that stands below it. */
export async function openState(page: Page, { path, clock, steps = [] }: NightState): Promise<void> {
  await page.clock.setFixedTime(instantOf(clock));
  await page.goto('/');
  await expect(page.getByRole('region', { name: 'Next', exact: true })).toBeVisible();
  if (path !== '/') await page.goto(path);
  for (const step of steps) await step(page);
  await expect(
    page
      .getByRole('heading', { name: 'Before you touch it' })
      .or(page.getByRole('heading', { name: 'No plan yet' }))
      .or(page.locator('[data-view="track"]'))
      .first(),
  ).toBeAttached();
  await page.evaluate(() => document.fonts.ready);
}
