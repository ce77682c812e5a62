import { expect } from '@playwright/test';
import { clubNightOf } from './club-hand';
import { openNumbers } from './numbers';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago', now: '18:15' });

test('what another tab chose is told on a page whose plan it changes', async ({ night, context }) => {
  test.setTimeout(120_000);
  const names = await clubNightOf(night, 2);
  await night.goto('/');
  const machine = (page: typeof night) => page.getByLabel('Machine shown');
  await openNumbers(night);
  const other = await context.newPage();
  await other.goto('/');
  await openNumbers(other);
  await expect(machine(other)).toBeVisible();
  await expect(machine(night)).toBeVisible();
  await machine(other).selectOption(names[1] ?? '');
  await expect(
    night.getByText(`Another tab of this browser chose ${names[1]} at Saturday on the lake`),
  ).toBeVisible();
  // Whoever chose it is told nothing.
  await expect(other.getByText(/^Another tab of this browser/)).toBeHidden();
  await night.getByRole('button', { name: 'Show what was here' }).click();
  await expect(night.getByText(/^Another tab of this browser/)).toBeHidden();
});

test('a form whose record another tab deleted says so, keeps what was typed and puts it back', async ({
  night,
  context,
}) => {
  test.setTimeout(120_000);
  const [name = ''] = await clubNightOf(night, 1);
  await night.goto('/machines');
  await night.getByRole('button', { name: `Edit ${name}` }).click();
  const typed = night.getByRole('textbox', { name: 'Name', exact: true }).first();
  await typed.fill('Typed meanwhile');
  const other = await context.newPage();
  await other.goto('/machines');
  await other.getByRole('button', { name: `Delete ${name}` }).click();
  await expect(night.getByText(/^This was deleted in another tab\. What you typed stays here/)).toBeVisible();
  await expect(typed).toHaveValue('Typed meanwhile');
  await night.getByRole('button', { name: 'Save machine' }).click();
  await expect(night.getByText(/Save again to put it back/)).toBeVisible();
  await night.getByRole('button', { name: 'Save machine' }).click();
  await expect(night.getByRole('heading', { name: 'Typed meanwhile' })).toBeVisible();
});
