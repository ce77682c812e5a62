import { expect, type Page } from '@playwright/test';
import { EVENING_C, forecastAnswer } from '../weather-page/forecast-answer';
import { EVENING } from './clock';
import { openNumbers } from './numbers';
import { accessFaults, test } from './watched-page';
import { answerPlaces } from './weather-answers';

// The forecasts here are dated.
test.use({ now: EVENING });

const heard = (page: Page) => page.getByRole('status', { name: 'Watch' });
const watch = (page: Page) => page.getByRole('region', { name: 'Watch', exact: true });
const shifted = (by: number) => EVENING_C.map((celsius) => celsius + by);

/** The server's next answers, each asked for by hand; the plan is accepted on the first. */
async function accepted(page: Page): Promise<(celsius: readonly number[]) => Promise<void>> {
  let celsius: readonly number[] = EVENING_C;
  let asked = 0;
  await page.route('**/api/forecast?**', (route) => {
    asked += 1;
    const fetchedAt = Date.parse(EVENING) + asked * 1000;
    return route.fulfill({
      contentType: 'application/json',
      body: JSON.stringify(forecastAnswer({ celsius, fetchedAt })),
    });
  });
  await answerPlaces(page);
  await page.goto('/');
  await page.getByRole('link', { name: 'Get the forecast' }).click();
  await page.getByRole('button', { name: 'Get the forecast' }).click();
  await page.getByRole('button', { name: 'Go by the forecast alone' }).click();
  await openNumbers(page);
  await expect(page.getByRole('cell', { name: 'typed' })).toHaveCount(0);
  await watch(page).getByRole('button', { name: 'This is my plan' }).click();
  await expect(watch(page)).toContainText('The same.');
  return async (next) => {
    celsius = next;
    const before = asked;
    await page.getByRole('button', { name: 'Ask again now' }).click();
    await expect.poll(() => asked).toBeGreaterThan(before);
    await expect(page.getByRole('button', { name: 'Ask again now' })).toBeEnabled();
    const coldest = Math.round((Math.min(...next) * 9) / 5 + 32);
    await expect(page.getByRole('table', { name: /^Air hour by hour/ })).toContainText(
      `${coldest < 0 ? '−' : ''}${Math.abs(coldest)}`,
    );
  };
}

test.describe('the watch', () => {
  test('announces a changed act with both plans and the difference in words', async ({ night }) => {
    const ask = await accepted(night);
    await expect(heard(night)).toHaveText('');
    await ask(shifted(-2));
    await expect(heard(night)).toContainText('The swap to 430 420 430 moved from');
    await expect(heard(night)).toContainText('colder');
    await expect(night.getByText('Your plan has changed.')).toBeVisible();
    await expect(watch(night)).toContainText('Your plan');
    await expect(watch(night)).toContainText('Plan now');
    await expect(watch(night)).toContainText('Difference');
    expect(await accessFaults(night)).toEqual([]);
    await night.getByRole('button', { name: 'This is my plan now' }).first().click();
    await expect(watch(night)).toContainText('The same.');
    await expect(night.getByText('Your plan has changed.')).toBeHidden();
  });

  test('stays silent on noise', async ({ night }) => {
    const ask = await accepted(night);
    for (const by of [0.1, 0.3, 0.2]) {
      await ask(shifted(by));
      await expect(heard(night)).toHaveText('');
    }
  });

  test.describe('with the offline worker', () => {
    test.use({ offlineWorker: true });
    test('shows a notification where the person allowed it', async ({ night }) => {
      await night.addInitScript(() => {
        const shown: string[] = [];
        Object.assign(window, { shownNotifications: shown });
        // A browser without windows allows none, whatever it is granted.
        Object.defineProperty(Notification, 'permission', { get: () => 'granted' });
        ServiceWorkerRegistration.prototype.showNotification = (title, options) => {
          shown.push(`${title}: ${options?.body ?? ''}`);
          return Promise.resolve();
        };
      });
      const ask = await accepted(night);
      await night.evaluate(() => navigator.serviceWorker.ready);
      await expect(watch(night)).toContainText('shows a notification when the next job changes');
      await ask(shifted(-2));
      await expect(heard(night)).toContainText('moved from');
      const shown = () => night.evaluate(() => Reflect.get(window, 'shownNotifications'));
      await expect.poll(shown).toEqual([expect.stringMatching(/^Night drags on Lake Orvana: The swap to/)]);
    });
  });
});
