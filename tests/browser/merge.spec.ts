import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { instantOf } from './clock';
import { countingHand } from './counting-hand';
import { enterOwnNight } from './enter-own-night';
import { accessFaults, overflows, test } from './watched-page';

// Before the first round of the night that is entered here.
test.use({ now: '19:15', timezoneId: 'America/Chicago' });

const DAY_MS = 86_400_000;
const IT_IS_IN = 'Done: 420 410 is in';
const inNow = (page: Page) => page.getByRole('region', { name: 'In now' });

async function openBackup(page: Page, name: string, file: Buffer): Promise<void> {
  await page.goto('/machines');
  await page.getByRole('button', { name: 'Backup' }).click();
  await page
    .getByLabel('Open a backup file')
    .setInputFiles({ name, mimeType: 'application/json', buffer: file });
}

async function saveBackup(page: Page): Promise<Buffer> {
  await page.goto('/machines');
  await page.getByRole('button', { name: 'Backup' }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save a backup file' }).click();
  return readFileSync(await (await download).path());
}

async function rename(page: Page, from: string, to: string): Promise<void> {
  await page.goto('/machines');
  await page.getByRole('button', { name: `Edit ${from}` }).click();
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill(to);
  await page.getByRole('button', { name: 'Save machine' }).click();
  await expect(page.getByRole('button', { name: `Edit ${to}` })).toBeVisible();
}

/** What is done at the track: the jets are in, and a reading. */
async function atTheTrack(page: Page, temperature: string): Promise<void> {
  await page.goto('/');
  await page.getByRole('button', { name: IT_IS_IN }).click();
  await expect(inNow(page)).toContainText('420 410');
  await page.getByRole('link', { name: 'Take a reading' }).first().click();
  const form = page.getByRole('dialog', { name: 'Reading' });
  await form.getByRole('textbox', { name: 'Temperature' }).fill(temperature);
  await form.getByRole('button', { name: 'Use this reading' }).click();
  await expect(form).toHaveCount(0);
}

test('a laptop whose clock is a day ahead is merged into the phone, and nothing is lost', async ({
  night,
  newContext,
}) => {
  test.setTimeout(180_000);
  await night.goto('/');
  await enterOwnNight(countingHand(), night, '380 390 400 410 420 430');
  const common = await saveBackup(night);
  const laptop = await (await newContext()).newPage();
  await laptop.clock.setFixedTime(instantOf('19:15') + DAY_MS);
  await openBackup(laptop, 'phone.json', common);
  await laptop.getByRole('button', { name: 'Replace what is here' }).click();
  await expect(laptop.getByText('phone.json is taken in.')).toBeVisible();
  await rename(laptop, 'Blue twin', 'Blue twin of the laptop');
  await rename(laptop, 'Blue twin of the laptop', 'Laptop twin');
  const file = await saveBackup(laptop);
  await rename(night, 'Blue twin', 'Phone twin');
  await atTheTrack(night, '9');
  await openBackup(night, 'laptop.json', file);
  const dialog = night.locator('dialog[open]');
  await expect(dialog).toContainText('Machine Laptop twin');
  await expect(dialog).toContainText('“Laptop twin” stands; “Phone twin” is set aside.');
  expect(await accessFaults(night)).toEqual([]);
  await dialog.getByRole('button', { name: 'Merge' }).click();
  await expect(night.getByText('laptop.json is taken in.')).toBeVisible();
  await expect(night.getByRole('button', { name: 'Edit Laptop twin' })).toBeVisible();
  await night.goto('/');
  await expect(inNow(night)).toContainText('420 410');
  await expect(night.getByText(/9\s°F at 19:15/).first()).toBeAttached();
  await night.goto('/machines');
  await night.getByRole('link', { name: 'Look at what is set aside (1 thing)' }).click();
  const main = night.getByRole('main');
  await expect(main).toContainText('Name: “Phone twin”.');
  await expect(main).toContainText('It stood here before laptop.json came in.');
  await night.reload();
  await expect(main).toContainText('Name: “Phone twin”.');
  expect(await accessFaults(night)).toEqual([]);
  expect(await overflows(night)).toBe(false);
  await night.getByRole('button', { name: 'Take back' }).click();
  await expect(main).toContainText('Nothing is set aside.');
  await night.getByRole('button', { name: 'Undo' }).click();
  await expect(main).toContainText('Name: “Phone twin”.');
  await night.getByRole('button', { name: 'Take back' }).click();
  await expect(main).toContainText('Nothing is set aside.');
  await night.goto('/machines');
  await expect(night.getByRole('button', { name: 'Edit Phone twin' })).toBeVisible();
});

test('a machine deleted on the phone stays deleted when the laptop is merged, until it is asked back', async ({
  night,
  newContext,
}) => {
  test.setTimeout(180_000);
  await night.goto('/');
  await enterOwnNight(countingHand(), night, '380 390 400 410 420 430');
  const laptop = await (await newContext()).newPage();
  await openBackup(laptop, 'phone.json', await saveBackup(night));
  await laptop.getByRole('button', { name: 'Replace what is here' }).click();
  await expect(laptop.getByText('phone.json is taken in.')).toBeVisible();
  const older = await saveBackup(laptop);
  await rename(laptop, 'Blue twin', 'Laptop twin');
  const newer = await saveBackup(laptop);
  await night.goto('/machines');
  await night.getByRole('button', { name: 'Delete Blue twin' }).click();
  await expect(night.getByText('Blue twin is deleted.')).toBeVisible();
  const dialog = night.locator('dialog[open]');
  // What says nothing new stays away by name.
  await openBackup(night, 'laptop.json', older);
  await expect(dialog).toContainText('Removed here, so it stays out: Machine Blue twin.');
  expect(await accessFaults(night)).toEqual([]);
  await dialog.getByRole('button', { name: 'Merge', exact: true }).click();
  await expect(night.getByText('laptop.json is taken in.')).toBeVisible();
  await expect(night.getByRole('button', { name: 'Edit Blue twin' })).toHaveCount(0);
  // What was changed meanwhile is not lost.
  await openBackup(night, 'newer.json', newer);
  await expect(dialog).toContainText('Machine Laptop twin');
  await expect(dialog).toContainText('It stays removed, and what stands there is set aside.');
  await dialog.getByRole('button', { name: 'Merge', exact: true }).click();
  await expect(night.getByText('newer.json is taken in.')).toBeVisible();
  await night.goto('/aside');
  await expect(night.getByRole('main')).toContainText(
    'It was removed here, and had been changed in newer.json.',
  );
  // The laptop hears of it, by name, and may ask for the machine back.
  await openBackup(laptop, 'phone.json', await saveBackup(night));
  await expect(laptop.locator('dialog[open]')).toContainText(
    'It was removed there. It goes, and is set aside.',
  );
  await openBackup(night, 'laptop.json', older);
  await dialog.getByRole('button', { name: 'Merge, and bring back what was removed' }).click();
  await expect(night.getByRole('button', { name: 'Edit Blue twin' })).toBeVisible();
  await openBackup(laptop, 'phone.json', await saveBackup(night));
  await expect(laptop.locator('dialog[open]')).not.toContainText('It was removed there.');
});

async function shareLink(page: Page): Promise<string> {
  await page.goto('/');
  await page.getByRole('button', { name: 'Share this night' }).click();
  const field = page.getByRole('textbox', { name: 'Link to this night' });
  await expect(field).toHaveValue(/\/open#2[\w-]+$/);
  return field.inputValue();
}

test('a night shared, changed on another profile and shared back brings each change, by name', async ({
  night,
  newContext,
}) => {
  test.setTimeout(180_000);
  await night.goto('/');
  await enterOwnNight(countingHand(), night, '380 390 400 410 420 430');
  const racer = await (await newContext()).newPage();
  await racer.goto(await shareLink(night));
  await racer.getByRole('button', { name: 'Keep as my night' }).click();
  await expect(racer.getByText('Kept as a night of yours.')).toBeVisible();
  await atTheTrack(racer, '9');
  await rename(racer, 'Blue twin', 'Ilsa’s twin');
  const back = await shareLink(racer);
  // The tech changes another thing meanwhile.
  await night.goto('/club');
  await night.getByRole('link', { name: 'Add racers' }).click();
  const form = night.locator('dialog[open]');
  await form.getByRole('radio', { name: 'Links and files' }).check();
  await form.getByRole('textbox', { name: 'Links' }).fill(back);
  await expect(form).toContainText('Name: “Blue twin” → “Ilsa’s twin”.');
  await expect(form).toContainText(/Reading: 9\.0\s°F at .* comes in\./);
  await expect(form).toContainText(/What is in .*: 420 410 comes in\./);
  await expect(form.getByRole('button', { name: 'Add', exact: true })).toBeDisabled();
  await form.getByRole('button', { name: 'Take in what is new' }).click();
  await expect(form).toContainText('is taken in.');
  await night.goto('/');
  await expect(night.getByText(/9\s°F at 19:15/).first()).toBeAttached();
  await expect(inNow(night)).toContainText('420 410');
  await night.goto(back);
  await expect(night.getByRole('main')).toContainText('A merge would change nothing');
  await night.goto('/machines');
  await expect(night.getByRole('button', { name: 'Edit Ilsa’s twin' })).toBeVisible();
  await expect(night.getByRole('button', { name: /^Edit .*twin/ })).toHaveCount(1);
});
