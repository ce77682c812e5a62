import { expect, type Page } from '@playwright/test';
import { accessFaults, overflows, test } from './watched-page';

// The runs of tonight are still to come.
test.use({ now: '18:15' });

const dialog = (page: Page) => page.locator('dialog[open]');

async function fillMachine(page: Page): Promise<void> {
  const form = dialog(page);
  await form.getByLabel('Name', { exact: true }).fill('Blue twin');
  await form.getByLabel('Main jet', { exact: true }).fill('400');
  await form.getByLabel('Jets in the box').fill('380 390 400 410 420 430');
  await form.locator('[name="baseline.temperature"]').fill('20');
  await form.locator('[name="baseline.elevation"]').fill('1300');
  await form.getByRole('button', { name: 'Save machine' }).click();
}

async function fillEvent(page: Page): Promise<void> {
  const form = dialog(page);
  await form.getByLabel('Name of the event').fill('Saturday heats');
  await form.locator('[name="elevation"]').fill('1300');
  await form.getByLabel('First at').fill('20:00');
  await form.getByLabel('Every', { exact: true }).fill('60');
  await form.getByLabel('How many', { exact: true }).fill('3');
  await form.getByLabel('Each lasting').fill('10');
  await form.getByRole('button', { name: 'Save event' }).click();
}

test('from nothing to a call: machine, event, hours, typed on a phone', async ({ night }) => {
  await night.goto('/');
  await night.getByRole('link', { name: 'Start my own night' }).first().click();
  await fillMachine(night);
  await expect(dialog(night)).toContainText('Your night, step 2 of 3: event');
  expect(await accessFaults(night)).toEqual([]);
  await fillEvent(night);
  await expect(dialog(night).getByRole('heading', { name: 'Hours', exact: true })).toBeVisible();
  expect(await overflows(night)).toBe(false);
  const temperature = (clock: string) =>
    dialog(night)
      .getByRole('textbox', { name: new RegExp(clock) })
      .first();
  await temperature('19:00').fill('18');
  await temperature('23:00').fill('2');
  await dialog(night).getByRole('button', { name: 'Save hours' }).click();
  await expect(dialog(night)).toHaveCount(0);
  await expect(night.getByRole('heading', { name: 'Saturday heats' })).toBeVisible();
  const call = night.getByRole('region', { name: 'The call' });
  await expect(call).toContainText(/(Start on|Put in|No swap)/);
  await expect(night.getByRole('row', { name: /^Round 3 22:00 to 22:10/ })).toBeVisible();
  // The page is prerendered with nothing of this in it; a reload must bring it back from the browser's own store.
  await night.reload();
  await expect(night.getByRole('heading', { name: 'Saturday heats' })).toBeVisible();
});

test('the demo night can be removed once there is another, and comes back by Undo', async ({ night }) => {
  await night.goto('/');
  await night.getByRole('link', { name: 'Start my own night' }).first().click();
  await fillMachine(night);
  await fillEvent(night);
  await expect(dialog(night).getByRole('heading', { name: 'Hours', exact: true })).toBeVisible();
  await night.keyboard.press('Escape');
  await expect(dialog(night)).toHaveCount(0);
  await expect(night.getByText(/^The plan needs the temperature of each hour\./)).toBeVisible();
  await night.getByLabel('Night shown').selectOption({ label: 'Night drags on Lake Orvana (invented)' });
  await night.getByRole('button', { name: 'Remove this night' }).click();
  await expect(night.getByLabel('Night shown')).toHaveCount(0);
  await night.getByRole('button', { name: 'Undo' }).click();
  await expect(night.getByLabel('Night shown')).toHaveCount(1);
});

test('the printed night fits one sheet', async ({ night }) => {
  await night.goto('/');
  await night.getByRole('heading', { name: 'The night in one picture' }).scrollIntoViewIfNeeded();
  await expect(night.locator('.recharts-surface').first()).toBeVisible();
  for (const format of ['A4', 'Letter']) {
    const sheet = (await night.pdf({ format })).toString('latin1');
    expect(sheet.match(/\/Type \/Page\b(?!s)/g)).toHaveLength(1);
  }
});
