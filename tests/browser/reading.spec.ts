import { expect, type Page } from '@playwright/test';
import { EVENING_C, forecastAnswer } from '../weather-page/forecast-answer';
import { takeBack } from './take-back';
import { accessFaults, overflows, test } from './watched-page';
import { answerPlaces } from './weather-answers';

/** 19:40 in the demo night's zone. */
const AT_19_40 = '2027-01-17T01:40:00Z';
test.use({ now: AT_19_40 });

/** A forecast 5 K milder than the demo's evening, so that its swap lies well after 19:40. */
const MILDER_C = EVENING_C.map((celsius) => celsius + 5);
/** It stands at 21.1 °F (-6.0 °C) at 19:40; this is 4 K (7.2 °F) below it. */
const FOUR_COLDER = '13.9';

const form = (page: Page) => page.getByRole('dialog', { name: 'Reading' });
const news = (page: Page) => page.getByRole('region', { name: 'What the reading moved' });

/** The demo night at 19:40 on a forecast of its own evening, with its typed hours taken away. */
async function onForecast(page: Page, celsius: readonly number[] = EVENING_C): Promise<void> {
  await page.route('**/api/forecast?**', (route) =>
    route.fulfill({
      contentType: 'application/json',
      body: JSON.stringify(forecastAnswer({ celsius, fetchedAt: Date.parse(AT_19_40) })),
    }),
  );
  await answerPlaces(page);
  await page.goto('/');
  await page.getByRole('link', { name: 'Get the forecast' }).click();
  await page.getByRole('button', { name: 'Get the forecast' }).click();
  await page.getByRole('button', { name: 'Go by the forecast alone' }).click();
  await expect(page.getByRole('cell', { name: 'typed' })).toHaveCount(0);
}

async function take(page: Page, temperature: string): Promise<void> {
  await page.getByRole('link', { name: 'Take a reading' }).first().click();
  await form(page).getByRole('textbox', { name: 'Temperature' }).fill(temperature);
  await form(page).getByRole('button', { name: 'Use this reading' }).click();
}

test.describe('a reading at the track', () => {
  test('4 K below the forecast at 19:40 moves the swap earlier, and the page says so and why', async ({
    night,
  }) => {
    await onForecast(night, MILDER_C);
    const call = night.getByRole('region', { name: 'The call' });
    await expect(call).toContainText('Put in 420 410 420 between Round 5 and Round 6 (22:15');
    await take(night, FOUR_COLDER);
    await expect(form(night)).toBeHidden();
    await expect(news(night)).toContainText('at 19:40, 7 °F colder than the hours say.');
    await expect(news(night)).toContainText(
      'The swap to 420 410 420 moved from 22:15 to 21:30, before Round 5: it is now 6 °F colder.',
    );
    await expect(call).toContainText('Put in 420 410 420 between Round 4 and Round 5 (21:30');
    expect(await accessFaults(night)).toEqual([]);
    await night.getByRole('button', { name: 'Undo' }).click();
    await expect(call).toContainText('Put in 420 410 420 between Round 5 and Round 6 (22:15');
    await expect(night.getByRole('region', { name: 'Readings' })).toContainText('None yet.');
  });

  test('is listed, put right, taken away and brought back', async ({ night }) => {
    await onForecast(night);
    await take(night, '10');
    const readings = night.getByRole('region', { name: 'Readings' });
    await expect(readings).toContainText('10 °F at 19:40');
    await readings.getByRole('button', { name: 'Change' }).click();
    await expect(form(night).getByRole('textbox', { name: 'Temperature' })).toHaveValue('10');
    await form(night).getByRole('textbox', { name: 'Temperature' }).fill('-12,5 °C');
    await form(night).getByRole('textbox', { name: 'Time' }).fill('1910');
    await form(night).getByRole('button', { name: 'Use this reading' }).click();
    await expect(readings).toContainText('10 °F at 19:10');
    await readings.getByRole('button', { name: 'Remove' }).click();
    await expect(readings).toContainText('None yet.');
    await takeBack(night, 'Reading removed');
    await expect(readings).toContainText('at 19:10');
    await night.reload();
    await expect(readings).toContainText('at 19:10');
  });

  test('far from the hours is questioned before it is used', async ({ night }) => {
    await onForecast(night);
    await take(night, '41');
    await expect(form(night).getByRole('alert')).toContainText(
      'Was the sensor in the sun or near an engine?',
    );
    await expect(night.getByRole('region', { name: 'Readings', includeHidden: true })).toContainText(
      'None yet.',
    );
    expect(await accessFaults(night)).toEqual([]);
    expect(await overflows(night)).toBe(false);
    await form(night).getByRole('button', { name: 'It is right as typed: use it' }).click();
    await expect(form(night)).toBeHidden();
    await expect(night.getByRole('region', { name: 'Readings' })).toContainText('41 °F at 19:40');
    await expect(news(night)).toContainText('warmer than the hours say');
  });

  test('is taken from the track view with the same form and leads back there', async ({ night }) => {
    await onForecast(night, MILDER_C);
    await night.getByRole('link', { name: 'At the track' }).click();
    await take(night, FOUR_COLDER);
    await expect(night.getByRole('link', { name: 'Whole night' })).toBeVisible();
    await expect(news(night)).toContainText('moved from 22:15 to 21:30');
  });
});
