import { expect, type Page } from '@playwright/test';

/** Takes back what was just done. It is shown before it is kept, and until it is kept the Undo of the act before stands there. */
export async function takeBack(page: Page, done: string | RegExp): Promise<void> {
  const told = page.getByRole('region', { name: 'Just done' });
  await expect(told).toContainText(done);
  await told.getByRole('button', { name: 'Undo' }).click();
}
