import { expect } from '@playwright/test';
import { partlyToldNightFile } from '@/tests/support/past-night';
import { accessFaults, ON_DESK, test } from './watched-page';

// The morning after the night of 16 January, 08:15 in Chicago.
test.use({ now: '2027-01-17T14:15:00Z' });

const NIGHT = partlyToldNightFile();

test(
  'a night that is over is looked back on, and leads to the runs not yet logged',
  ON_DESK,
  async ({ night }) => {
    await night.goto('/machines');
    await night.getByRole('button', { name: 'Backup' }).click();
    await night
      .getByLabel('Open a backup file')
      .setInputFiles({ name: 'backup.json', mimeType: 'application/json', buffer: Buffer.from(NIGHT) });
    await night.getByRole('button', { name: /^Replace/ }).click();
    await expect(night.getByRole('row', { name: /machines/ })).toHaveCount(0);
    await night.goto('/');
    await night.getByRole('link', { name: 'How forecast and plan held' }).first().click();
    await expect(night.getByRole('heading', { name: 'After the night' })).toBeVisible();
    await expect(night.getByText(/too warm on average, by 4 readings/)).toBeVisible();
    await expect(night.getByText('Judged by 4 readings and 2 verdicts.')).toBeVisible();
    const round = (name: string) => night.getByRole('row', { name: new RegExp(`^${name}`) });
    await expect(round('Round 4')).toContainText('rich');
    await expect(round('Round 8')).toContainText('not told');
    await expect(round('Perfect knowledge')).toBeVisible();
    // Nothing is wider than the screen.
    expect(
      await night.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
    ).toBeLessThanOrEqual(0);
    expect(await accessFaults(night)).toEqual([]);
    await night.getByRole('link', { name: 'Log it: Round 6' }).click();
    await night.getByText('Earlier runs not in the log').click();
    await night.getByRole('button', { name: 'Round 6: Good' }).click();
    await expect(round('Round 6')).toContainText('good');
    await night.goto('/after');
    await expect(night.getByText('Judged by 4 readings and 3 verdicts.')).toBeVisible();
  },
);

test('before the last run is over there is nothing to look back on', async ({ night }) => {
  await night.goto('/after');
  await expect(night.getByText('The night is not over.')).toBeVisible();
  await expect(night.getByText(/The last run ends at/)).toBeVisible();
});
