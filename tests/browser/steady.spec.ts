import { expect, type Page } from '@playwright/test';
import { clubNightOf } from './club-hand';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago', now: '18:15' });
test.setTimeout(120_000);

/** Adds up, from the start of every page, how much of what is in sight moves by itself (Cumulative Layout Shift). */
async function watchShifts(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const shifts: number[] = [];
    Object.assign(window, { shifts });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as unknown as readonly {
        value: number;
        hadRecentInput: boolean;
      }[])
        if (!entry.hadRecentInput) shifts.push(entry.value);
    }).observe({ type: 'layout-shift', buffered: true });
  });
}

const moved = (page: Page): Promise<number> =>
  page.evaluate(() =>
    (window as unknown as { shifts: number[] }).shifts.reduce((sum, each) => sum + each, 0),
  );

/** "Good" by web.dev/cls is 0.1 in all; a page that reserves its room needs a tenth of that. */
const MOST = 0.01;

for (const racers of [1, 6, 40])
  test(`the club's page holds still while its briefing is planned: ${racers}`, async ({ night }) => {
    await watchShifts(night);
    await clubNightOf(night, racers);
    for (const size of [
      { width: 360, height: 740 },
      { width: 1280, height: 800 },
    ]) {
      await night.setViewportSize(size);
      await night.reload();
      await expect(night.getByRole('heading', { name: 'Borrowing' })).toBeAttached();
      await night.waitForLoadState('networkidle');
      expect(await moved(night), `${size.width}`).toBeLessThanOrEqual(MOST);
    }
  });
