import { expect, type Page } from '@playwright/test';
import { openNumbers } from './numbers';
import { takeBack } from './take-back';
import { accessFaults, overflows, test } from './watched-page';

// Late in the night another baseline may change nothing any more.
test.use({ now: '18:15' });

const dialog = (page: Page) => page.locator('dialog[open]');
const question = (page: Page) => page.getByRole('note').filter({ hasText: 'Which pressure is it?' });
const call = (page: Page) => page.getByRole('region', { name: 'The call' });

/** The demo night's machine with this as its baseline's station pressure [inHg], at 1,320 ft. */
async function typeBaseline(page: Page, pressure: string): Promise<void> {
  await openNumbers(page);
  await page.getByRole('link', { name: 'Change: Machine' }).click();
  await dialog(page).locator('[name="baseline.pressure"]').fill(pressure);
}

async function save(page: Page, what: 'machine' | 'hours'): Promise<void> {
  await dialog(page)
    .getByRole('button', { name: `Save ${what}` })
    .click();
  await expect(dialog(page)).toHaveCount(0);
}

test('a sea-level number as station pressure of a baseline is saved, asked about, mended with one press and asked no more', async ({
  night,
}) => {
  await night.goto('/');
  await expect(question(night)).toHaveCount(0);
  const before = await call(night).textContent();
  await typeBaseline(night, '30.05');
  await expect(question(night)).toContainText('as station pressure at 1,320');
  expect(await overflows(night)).toBe(false);
  expect(await accessFaults(night, { within: 'dialog[open]' })).toEqual([]);
  await save(night, 'machine');
  await expect(question(night)).toContainText('Baseline: 30.05');
  expect(await call(night).textContent()).not.toBe(before);
  await question(night).getByRole('button', { name: 'It is a sea-level number' }).click();
  await expect(question(night)).toHaveCount(0);
  await night.reload();
  await expect(call(night)).toBeVisible();
  await expect(question(night)).toHaveCount(0);
  await night.getByRole('link', { name: 'Change: Machine' }).click();
  await expect(dialog(night).getByRole('textbox', { name: 'Sea-level pressure' })).toHaveValue('30.05');
  await expect(question(night)).toHaveCount(0);
});

test('hours that are station pressure after all are asked about once', async ({ night }) => {
  await night.goto('/');
  await openNumbers(night);
  await night.getByRole('link', { name: 'Change: Hours' }).click();
  await dialog(night).locator('[name="pressure"]').fill('29.55');
  await save(night, 'hours');
  await expect(question(night)).toContainText('Typed hours: 29.55');
  const stands = question(night).getByRole('button', { name: 'It is station pressure' });
  await stands.click();
  await expect(question(night)).toHaveCount(0);
  await takeBack(night, 'The pressure stands as typed.');
  await stands.click();
  await expect(question(night)).toHaveCount(0);
  await night.getByRole('link', { name: 'Change: Hours' }).click();
  await expect(dialog(night).locator('[name="pressure"]')).toHaveValue('29.55');
  await expect(question(night)).toHaveCount(0);
});
