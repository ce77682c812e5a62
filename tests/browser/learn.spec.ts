import { expect, type Page } from '@playwright/test';
import { EVENING } from './clock';
import { test } from './watched-page';

// Baselines are dated here, and the newest is in force.
test.use({ now: EVENING });

/** What a page itself says loudly; the framework keeps an alert of its own for screen readers. */
const alertIn = (page: Page) => page.locator('[role=alert]:not(#__next-route-announcer__):visible');

/** An invented chart in °F and feet: what counts here is that it is one, not which. */
const CHART =
  '0 2000 5000 8000\n-20 440 420 400 370\n10 420 410 380 360\n40 410 390 370 340\n70 390 370 350 330';

async function openHistory(page: Page): Promise<void> {
  await page.goto('/');
  // The first page plans a whole night; on a busy machine that takes a while.
  await expect(page.getByRole('heading', { name: 'Night drags on Lake Orvana' })).toBeVisible({
    timeout: 30_000,
  });
  await page.goto('/machines');
  await page.getByRole('button', { name: /^Baselines, parts, learning/ }).click();
  await expect(page.getByRole('heading', { name: 'Baselines', exact: true })).toBeVisible();
}

test('a pasted chart teaches the response, and plans use it after a reload', async ({ night }) => {
  await openHistory(night);
  await expect(night.getByText('there is nothing yet to learn it from').first()).toBeVisible();
  await night.getByRole('radio', { name: 'A grid' }).check();
  await night.getByRole('textbox', { name: 'Cells, typed or pasted' }).fill(CHART);
  await night.getByRole('button', { name: 'Add to the chart' }).click();
  await expect(night.getByText('The pressure exponent is learned')).toBeVisible();
  await expect(night.getByText('The temperature exponent is learned')).toBeVisible();
  await night.getByRole('button', { name: 'Use what was learned in plans' }).click();
  await expect(night.getByText('Plans use these numbers, learned from your chart.')).toBeVisible();
  await night.reload();
  await expect(night.getByText('Plans use these numbers, learned from your chart.')).toBeVisible();
  await night.getByRole('button', { name: 'Back to what is assumed' }).click();
  await expect(night.getByText('Plans use what is assumed.')).toBeVisible();
});

test('a chart of one elevation does not pretend to know about pressure', async ({ night }) => {
  await openHistory(night);
  await night
    .getByRole('textbox', { name: 'Cells, typed or pasted' })
    .fill('-20 F 1300 ft 430\n40 F 1300 ft 390');
  await night.getByRole('button', { name: 'Add to the chart' }).click();
  await expect(night.getByText(/The pressure exponent stays near what is assumed/)).toBeVisible();
  await expect(night.getByText(/near one pressure/)).toBeVisible();
});

test('changed hardware marks the baseline, a new baseline from a past hour settles it, the old one can be used again', async ({
  night,
}) => {
  await openHistory(night);
  await night.getByRole('button', { name: 'Add a change' }).click();
  await expect(night.getByText(/The main moves \+2.0 sizes/)).toBeVisible();
  await night.getByRole('button', { name: 'Save change' }).click();
  await expect(night.getByText('Test the baseline again: a part was changed since.')).toBeVisible();
  await night.getByRole('button', { name: 'Add a baseline' }).click();
  await night.getByRole('radio', { name: 'A place and past hour' }).check();
  await night.getByRole('textbox', { name: 'Town near the track' }).fill('Nowhere at all');
  await night.getByRole('button', { name: 'Find the town' }).click();
  await expect(night.getByText(/No place called “Nowhere at all” was found/)).toBeVisible();
  await night.getByRole('textbox', { name: 'Town near the track' }).fill('Pine Hollow');
  await night.getByRole('button', { name: 'Find the town' }).click();
  await night.getByLabel('Date', { exact: true }).fill('2026-01-10');
  await night.getByLabel('Time of day there').fill('20:30');
  await night.getByRole('button', { name: 'Look the air up' }).click();
  await expect(night.getByRole('textbox', { name: 'Station pressure' })).not.toHaveValue('');
  await night.getByLabel('Proven on').fill('2027-01-18');
  await night.getByRole('textbox', { name: 'Main jets' }).fill('430');
  await night.getByRole('radio', { name: 'A size rich' }).check();
  await night.getByRole('button', { name: 'Save baseline' }).click();
  const inForce = night.getByRole('row', { name: /In force/ });
  await expect(inForce).toContainText('430 of 18 Jan 2027');
  await expect(night.getByText(/Test the baseline again/)).toHaveCount(0);
  await night.getByRole('button', { name: /^Use 410 400 410/ }).click();
  await expect(inForce).toContainText('410 400 410');
  await expect(night.getByText(/Test the baseline again/).first()).toBeVisible();
});

test('a backup goes out, comes in after a look, and a damaged one changes nothing', async ({ night }) => {
  await openHistory(night);
  await night.getByRole('button', { name: 'Back to the machines' }).click();
  await night.getByRole('button', { name: 'Backup' }).click();
  const download = night.waitForEvent('download');
  await night.getByRole('button', { name: 'Save a backup file' }).click();
  const file = await download;
  const text = (await (await file.createReadStream()).toArray()).join('');
  await night.getByRole('button', { name: 'Close' }).click();
  await night.getByRole('button', { name: /^Delete / }).click();
  await expect(night.getByText('No machine yet. Add the one you race.')).toBeVisible();
  await night.getByRole('button', { name: 'Backup' }).click();
  const open = (content: string) =>
    night
      .getByLabel('Open a backup file')
      .setInputFiles({ name: 'backup.json', mimeType: 'application/json', buffer: Buffer.from(content) });
  await open(text.replace('410', '411'));
  await expect(alertIn(night)).toContainText('The file is damaged');
  await open('{"app":"another"}');
  await expect(alertIn(night)).toContainText('another program');
  await open(text);
  await expect(night.locator('dialog[open]')).toContainText(
    'Removed here, so it stays out: Machine Ilsa Vorn’s triple.',
  );
  await night.getByRole('button', { name: 'Merge, and bring back what was removed' }).click();
  await expect(night.getByRole('button', { name: /^Edit / })).toHaveCount(1);
  await night.getByRole('button', { name: 'Undo' }).click();
  await expect(night.getByText('No machine yet. Add the one you race.')).toBeVisible();
});
