import { expect, type Page } from '@playwright/test';
import { writeBackup } from '@/lib/store/backup-file';
import { demoRecords } from '../night/night-case';
import { lakeEvening } from '../support/lake-evenings';
import { EVENING, instantOf } from './clock';
import { openNumbers } from './numbers';
import { accessFaults, overflows, test } from './watched-page';

test.use({ now: EVENING });

const NOW = instantOf(EVENING);

/** Five past evenings at a lake that ran 2 K under their hours, and tonight there. */
function lakeBackup(): string {
  const tonight = lakeEvening('tonight', { daysAgo: 0, off: 0 }, NOW);
  const past = [7, 14, 21, 28, 35].map((daysAgo) => lakeEvening(`n${daysAgo}`, { daysAgo, off: -2 }, NOW));
  const { machine } = demoRecords(NOW);
  return writeBackup(
    {
      machines: [machine],
      boxes: [],
      events: [...past, { ...tonight, value: { ...tonight.value, readings: [] } }],
      log: [],
      forecasts: [],
      comparisons: [],
      preferences: [],
    },
    '2027-01-16T12:00:00Z',
  );
}

async function tonightAtTheLake(page: Page): Promise<void> {
  await page.goto('/machines');
  await page.getByRole('button', { name: 'Backup' }).click();
  await page.getByLabel('Open a backup file').setInputFiles({
    name: 'backup.json',
    mimeType: 'application/json',
    buffer: Buffer.from(lakeBackup()),
  });
  await page.getByRole('button', { name: 'Replace what is here' }).click();
  await expect(page.getByText('backup.json is taken in.')).toBeVisible();
  await page.goto('/');
  await openNumbers(page);
  await page.getByLabel('Night shown').selectOption({ label: 'Lake tonight' });
  await expect(page.getByRole('heading', { name: 'Lake tonight' })).toBeVisible();
}

const readings = (page: Page) => page.getByRole('region', { name: 'Readings' });

test('a place that past nights taught is told, counted on, and switched off and on in one tap', async ({
  night,
}) => {
  await tonightAtTheLake(night);
  const taught = night.getByRole('region', { name: 'What past nights taught' });
  await expect(taught).toContainText(
    'This place ran 3.6 °F under the hours on 5 nights. The plan counts on 0.',
  );
  await taught.getByRole('button', { name: 'Plan without it' }).click();
  await expect(taught).toContainText('The plan does not count on it.');
  await night.reload();
  await expect(taught).toContainText('The plan does not count on it.');
  await taught.getByRole('button', { name: 'Count on it' }).click();
  await expect(taught).toContainText('The plan counts on');
  await night.getByRole('button', { name: 'Undo' }).click();
  await expect(taught).toContainText('The plan does not count on it.');
});

test('a station nearby and a pasted report are offered, and used only when taken', async ({ night }) => {
  await tonightAtTheLake(night);
  await expect(readings(night)).toContainText('None yet.');
  await night.getByRole('button', { name: 'No thermometer? Ask a weather station' }).click();
  await night.getByRole('button', { name: 'Look for stations nearby' }).click();
  const offers = night.getByRole('list', { name: 'Stations nearby' }).getByRole('listitem');
  await expect(offers).toHaveCount(2);
  await expect(offers.first()).toContainText(/Fake Lake: \d\.\d\smi away, .*\sminutes ago\. Here that is/);
  await expect(readings(night)).toContainText('None yet.');
  await night.getByLabel('Airfield report (METAR)').fill('it is cold');
  await night.getByRole('button', { name: 'Read the report' }).click();
  await expect(night.getByText(/does not begin as a report does/)).toBeVisible();
  await night.getByLabel('Airfield report (METAR)').fill('KXYZ 162355Z 18004KT 10SM CLR M08/M11 A2992');
  await night.getByLabel('How far away it is').fill('12');
  await night.getByRole('button', { name: 'Read the report' }).click();
  await expect(offers).toHaveCount(3);
  await expect(offers.first()).toContainText('KXYZ: 12 mi away, height not told, 20 minutes ago.');
  expect(await overflows(night)).toBe(false);
  expect(await accessFaults(night)).toEqual([]);
  await night.getByRole('button', { name: 'Use KXYZ as a reading' }).click();
  await expect(readings(night)).toContainText('From KXYZ');
  await expect(offers.first()).toContainText('Taken: it is among the readings.');
  await night.getByRole('button', { name: 'Undo' }).click();
  await expect(readings(night)).toContainText('None yet.');
});
