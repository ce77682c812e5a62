import { expect } from '@playwright/test';
import { openNumbers } from './numbers';
import { overflows, test } from './watched-page';

// Late in the night no run is left that a swap could be weighed for.
test.use({ now: '18:15' });

test('what a swap is worth is changed from the night page, and told in horsepower there', async ({
  night,
}) => {
  await night.goto('/');
  await openNumbers(night);
  const worth = night.getByRole('region', { name: 'What a swap is worth', exact: true });
  await expect(worth).toContainText('to be worth opening 3 carburettors');
  await worth.getByRole('link', { name: 'Change what a swap is worth' }).click();
  const field = night.getByLabel('What a swap is worth');
  await expect(field).toBeFocused();
  await expect(field).toBeInViewport();
  await field.fill('2.5');
  await night.getByLabel('Rated power').fill('200');
  expect(await overflows(night)).toBe(false);
  await night.getByRole('button', { name: 'Save machine' }).click();
  await expect(night.getByRole('heading', { name: 'Machines', level: 1 })).toBeVisible();
  await night.goto('/');
  await openNumbers(night);
  await expect(worth).toContainText('A swap must save 2.5 % power (5 hp)');
  await expect(worth).toContainText('hp)');
  expect(await overflows(night)).toBe(false);
});
