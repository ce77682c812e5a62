import { expect, type Page } from '@playwright/test';
import { dateText } from '@/lib/words/day-text';
import { instantOf, TONIGHT } from './clock';
import { test } from './watched-page';

// Four rounds are over.
test.use({ now: '21:40' });

/** What a page itself says loudly; what is hidden says nothing yet, and the framework keeps an alert of its own. */
const alertIn = (page: Page) => page.locator('[role=alert]:not(#__next-route-announcer__):visible');

async function openLog(page: Page): Promise<void> {
  await page.goto('/log');
  // The night is planned before its runs are known; on a busy machine that takes a while.
  await expect(page.getByRole('heading', { name: 'How was the last run?' })).toBeVisible({ timeout: 30_000 });
}

/** Tonight as the log writes it. */
const SAID = dateText(TONIGHT);
/** The fourth round as the log names it. */
const ROUND_4 = `Round 4, ${SAID}, 21:15`;

const row = (page: Page, name: RegExp | string) => page.getByRole('row', { name });

test('after a run one tap on the log keeps its jets, air and verdict; undo takes it back', async ({
  night,
}) => {
  await openLog(night);
  await night.getByRole('button', { name: 'Round 4: Good' }).click();
  await expect(row(night, ROUND_4)).toContainText('good');
  await expect(night.getByRole('button', { name: 'Round 3: Good' })).toBeVisible();
  await night.reload();
  await expect(row(night, ROUND_4)).toContainText(/4[12]0\s4[01]0\s4[12]0/);
  await night.getByRole('button', { name: `Delete ${ROUND_4}` }).click();
  await expect(row(night, /Round 4/)).toHaveCount(0);
  await night.getByRole('button', { name: 'Undo' }).click();
  await expect(row(night, /Round 4/)).toHaveCount(1);
});

test('a lean run changes the next act at once, on the log and on the page of the night', async ({
  night,
}) => {
  await night.goto('/');
  const next = night.getByRole('region', { name: 'Next' });
  await expect(next).toContainText('No swap', { timeout: 30_000 });
  await openLog(night);
  await night.getByRole('button', { name: 'Round 4: Lean' }).dblclick();
  const said = night.getByRole('note').filter({ hasText: 'Round 4 was logged lean' });
  await expect(said).toContainText(/The plan now: Put in 4\d0 4\d0 4\d0/);
  await expect(said).toContainText('only then hold it wide open');
  await expect(night.getByText(/^Noted: Round 4, lean, on 4/)).toBeVisible();
  await expect(night.getByRole('button', { name: 'Round 4: Lean' })).toHaveCount(0);
  await expect(row(night, new RegExp(SAID))).toHaveCount(1);
  await night.goto('/');
  await expect(next).toContainText(/Put in 4\d0\s4\d0\s4\d0/, { timeout: 30_000 });
  await night.goto('/log');
  await night.getByRole('button', { name: `Delete ${ROUND_4}` }).click();
  await expect(said).toHaveCount(0);
});

test('a past run that nobody told of asks what was in before it asks how it was', async ({ night }) => {
  await night.clock.setFixedTime(instantOf('18:15'));
  await night.goto('/log');
  await expect(night.getByText('No run of this night is over yet.')).toBeVisible({ timeout: 30_000 });
  await night.clock.setFixedTime(instantOf('19:20'));
  await night.reload();
  await expect(night.getByText('Round 1: what was in?')).toBeVisible({ timeout: 30_000 });
  await expect(night.getByRole('button', { name: 'Round 1: Lean' })).toHaveCount(0);
  await night.getByRole('button', { name: 'Round 1: 410 400 410' }).click();
  await night.getByRole('button', { name: 'Round 1: By cylinder' }).click();
  const dialog = night.getByRole('dialog');
  await dialog.getByRole('group', { name: 'Cylinder 2' }).getByRole('radio', { name: 'Lean' }).check();
  await dialog.getByRole('button', { name: 'Put it into the log' }).click();
  await expect(row(night, `Round 1, ${SAID}, 19:00`)).toContainText('lean in cylinder 2');
  await night.reload();
  await expect(row(night, /Round 1/)).toContainText('410 400 410');
});

test('time, speed and note can be added to a run, and mistakes are said beside the field', async ({
  night,
}) => {
  await openLog(night);
  await night.getByRole('button', { name: 'Round 4: Rich' }).click();
  await night.getByRole('button', { name: `Edit ${ROUND_4}` }).click();
  await night.getByRole('textbox', { name: 'By how many sizes' }).fill('1,5');
  await night.getByRole('textbox', { name: 'Time', exact: true }).fill('fast');
  await night.getByRole('button', { name: 'Save run' }).click();
  await expect(alertIn(night)).toContainText('"fast" is not a number');
  await night.getByRole('textbox', { name: 'Time', exact: true }).fill('6.42');
  await night.getByRole('textbox', { name: 'Note' }).fill('left plug darker');
  await night.getByRole('button', { name: 'Save run' }).click();
  await expect(row(night, /Round 4/)).toContainText('1.5 sizes rich');
});

test('the log goes out as CSV and comes in again; a broken file changes nothing', async ({ night }) => {
  await openLog(night);
  await night.getByRole('button', { name: 'Round 4: Good' }).click();
  await expect(row(night, /Round 4/)).toHaveCount(1);
  const download = night.waitForEvent('download');
  await night.getByRole('button', { name: /Save as CSV/ }).click();
  const file = await (await download).path();
  await night.getByRole('button', { name: /^Delete Round 4/ }).click();
  await expect(row(night, /Round 4/)).toHaveCount(0);
  await night.getByLabel('Take in a CSV').setInputFiles(file);
  await night.getByRole('button', { name: 'Take in 1 run' }).click();
  await expect(row(night, /Round 4/)).toContainText('good');
  const broken = `time,machine,mains,temperature_c\n${TONIGHT}T20:30:00-06:00,Nobody,410,-5`;
  await night
    .getByLabel('Take in a CSV')
    .setInputFiles({ name: 'broken.csv', mimeType: 'text/csv', buffer: Buffer.from(broken) });
  await expect(alertIn(night)).toContainText('nothing was changed');
  await expect(alertIn(night)).toContainText('no machine called “Nobody”');
  await expect(row(night, SAID)).toHaveCount(1);
});

test('a second tab sees the run at once', async ({ night, context }) => {
  await openLog(night);
  const second = await context.newPage();
  await second.goto('/log');
  await expect(second.getByRole('button', { name: 'Round 4: Lean' })).toBeVisible();
  await night.getByRole('button', { name: 'Round 4: Lean' }).click();
  await expect(row(second, ROUND_4)).toContainText('lean');
});

test('runs, comparisons and machines are there after the browser was shut and opened again', async ({
  openProfile,
}) => {
  const before = await openProfile('profile');
  const page = await before.newPage();
  await page.goto('/log');
  await page.getByRole('button', { name: 'Add a run by hand' }).click();
  await page.getByRole('textbox', { name: 'Run', exact: true }).fill('Last of the season');
  await page.getByLabel('Time of day').fill('20:30');
  await page.getByRole('textbox', { name: 'Temperature' }).fill('12');
  await page.getByRole('textbox', { name: 'Elevation' }).fill('1300');
  await page.getByRole('button', { name: 'Save run' }).click();
  await expect(row(page, /Last of the season/)).toHaveCount(1);
  await page.goto('/compare');
  await page.getByRole('button', { name: 'New comparison' }).click();
  await expect(page.getByRole('textbox', { name: 'Name' })).toHaveValue('Comparison 1');
  await before.close();
  const after = await openProfile('profile');
  const again = await after.newPage();
  await again.goto('/log');
  await expect(row(again, /Last of the season/)).toHaveCount(1);
  await again.goto('/compare');
  await expect(again.getByRole('textbox', { name: 'Name' })).toHaveValue('Comparison 1');
  await again.goto('/machines');
  await expect(again.getByRole('button', { name: /^Edit / })).toHaveCount(1);
  await after.close();
});
