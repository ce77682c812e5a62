import type { Page } from '@playwright/test';

/** Opens what the night is made of: set-up, worth of a swap, runs, box and hours in figures. */
export async function openNumbers(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Numbers', exact: true }).click();
}
