import { expect, type Page } from '@playwright/test';
import { faultsInEveryLook, ON_DESK, test } from './watched-page';

async function addRuns(page: Page, side: 'before' | 'after', measured: string, mains: string): Promise<void> {
  await page.getByRole('button', { name: `Add runs ${side}` }).click();
  await page.getByRole('textbox', { name: 'Measured' }).fill(measured);
  await page.getByRole('textbox', { name: 'Main jets' }).fill(mains);
  await page.getByRole('textbox', { name: 'Temperature' }).fill('13');
  await page.getByRole('textbox', { name: 'Elevation' }).fill('1320');
  await page.getByRole('button', { name: 'Save runs' }).click();
  await expect(page.getByRole('button', { name: 'Save runs' })).toBeHidden();
}

/** The demo's machine must be there before runs can be made with one. */
async function openCompare(page: Page): Promise<void> {
  await page.goto('/');
  // The first page plans a whole night; on a busy machine that takes a while.
  await expect(page.getByRole('heading', { name: 'Night drags on Lake Orvana' })).toBeVisible({
    timeout: 30_000,
  });
  await page.goto('/compare');
  await page.getByRole('button', { name: 'New comparison' }).click();
}

test(
  'an engine five sizes rich that loses its airbox gains by mixture, and the page says so',
  ON_DESK,
  async ({ night }) => {
    await openCompare(night);
    await addRuns(night, 'before', '145.2 145.9 145.5', '460');
    await expect(night.getByText('There is no run after the part yet.')).toBeVisible();
    await addRuns(night, 'after', '148.9 148.2 148.7', '460');
    await night.getByRole('combobox', { name: /move the mixture/ }).selectOption('airbox-off');
    await expect(night.getByText('explained by the mixture, not proven for the part')).toBeVisible();
    await expect(night.getByText(/It was rich before/)).toBeVisible();
    await expect(
      night.getByRole('img', { name: 'The change split into air, mixture and part' }),
    ).toBeVisible();
    expect(await faultsInEveryLook(night)).toEqual([]);
    await night.reload();
    await expect(night.getByText('explained by the mixture, not proven for the part')).toBeVisible();
  },
);

test('an honest part is found, by any standard, and a deleted run can be had back', async ({ night }) => {
  await openCompare(night);
  await addRuns(night, 'before', '150.2 149.8 150', '410 400 410');
  await addRuns(night, 'after', '154.1 153.8 154.2', '410 400 410');
  await expect(night.getByText('The part makes power.')).toBeVisible();
  await night.getByRole('combobox', { name: 'Correction standard' }).selectOption('din-70020');
  await expect(night.getByText(/Air corrected by DIN 70020 \(part 6, 1976\)/)).toBeVisible();
  await night.getByRole('button', { name: 'Delete 154.1 hp after' }).click();
  await expect(night.getByRole('button', { name: 'Delete 154.1 hp after' })).toHaveCount(0);
  await night.getByRole('button', { name: 'Undo' }).click();
  await expect(night.getByRole('button', { name: 'Delete 154.1 hp after' })).toHaveCount(1);
});
