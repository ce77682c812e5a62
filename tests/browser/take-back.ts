import { expect, type Page } from '@playwright/test';

/** Takes back what was just done, once it is kept and said. */
export async function takeBack(page: Page, done: string | RegExp): Promise<void> {
  const told = page.getByRole('region', { name: 'Just done' });
  await expect(told).toContainText(done);
  await told.getByRole('button', { name: 'Undo' }).click();
}
