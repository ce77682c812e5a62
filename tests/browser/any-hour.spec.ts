import { expect } from '@playwright/test';
import { accessFaults, overflows, test } from './watched-page';

// At whatever hour a newcomer comes by: no time is chosen here, so that `npm run clocks` can choose it.
const NIGHT = 'Night drags on Lake Orvana';

test('at any hour the night opens, says what is in and what to do next, and a reload changes nothing', async ({
  night,
}) => {
  await night.goto('/');
  await expect(night.getByRole('heading', { name: NIGHT })).toBeVisible();
  const plate = (name: string) => night.getByRole('region', { name, exact: true });
  await expect(plate('In now')).toContainText(/\d{3} \d{3} \d{3}/);
  await expect(plate('Next')).toBeVisible();
  await expect(night.getByRole('row', { name: /^Round \d/ })).toHaveCount(8);
  expect(await overflows(night)).toBe(false);
  const said = await plate('Next').textContent();
  await night.reload();
  await expect(plate('Next')).toHaveText(said ?? '');
  expect(await accessFaults(night)).toEqual([]);
});

test('at any hour other jets are told to be in and taken back', async ({ night }) => {
  await night.goto('/');
  const fitted = night.getByRole('region', { name: 'In now', exact: true });
  await night.getByRole('button', { name: 'Other jets' }).click();
  for (const [i, main] of ['450', '460', '450'].entries())
    await night.getByLabel(`Main jet, carburettor ${i + 1}`).selectOption(main);
  await night.getByRole('button', { name: 'Done: it is in' }).click();
  await expect(fitted).toContainText('450 460 450');
  await night.reload();
  await expect(fitted).toContainText('450 460 450');
});

test('at any hour the night is shared, and the link opens the same night', async ({ night, newContext }) => {
  await night.goto('/');
  await night.getByRole('button', { name: 'Share this night' }).click();
  const link = night.getByRole('textbox', { name: 'Link to this night' });
  await expect(link).toHaveValue(/\/open#1[\w-]+$/);
  const other = await (await newContext()).newPage();
  await other.goto(await link.inputValue());
  await expect(other.getByRole('heading', { name: NIGHT })).toBeVisible();
});

test('at any hour a forecast comes from the server and is fresh', async ({ night }) => {
  await night.goto('/');
  await night.getByRole('link', { name: 'Get the forecast' }).click();
  await night.getByRole('button', { name: 'Get the forecast' }).click();
  const weather = night.getByRole('region', { name: 'Weather', exact: true });
  await expect(weather).toContainText(/fresh.*Open-Meteo, asked for/);
});

for (const [path, words] of [
  ['/log', 'Add a run by hand'],
  ['/club', 'Start a club night'],
  ['/trail', 'Print the card'],
  ['/machines', 'Add a machine'],
  ['/compare', 'New comparison'],
] as const)
  test(`at any hour ${path} opens and stays within the screen`, async ({ night }) => {
    await night.goto('/');
    await expect(night.getByRole('heading', { name: NIGHT })).toBeVisible();
    await night.goto(path);
    await expect(night.locator(':is(a, button)', { hasText: words }).first()).toBeVisible();
    expect(await overflows(night)).toBe(false);
  });
