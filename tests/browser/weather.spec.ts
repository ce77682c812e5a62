import { expect, type Page, type Route } from '@playwright/test';
import { EVENING_C, forecastAnswer } from '../weather-page/forecast-answer';
import { EVENING } from './clock';
import { openNumbers } from './numbers';
import { takeBack } from './take-back';
import { HYPHENED, tornIn } from './torn';
import { accessFaults, overflows, test } from './watched-page';
import { answerPlaces, jsonAnswer } from './weather-answers';

// The forecasts here are dated.
test.use({ now: EVENING });

const NOW = Date.parse(EVENING);
const FORECAST = '**/api/forecast?**';
const PLACES = '**/api/places?**';

const weather = (page: Page) => page.getByRole('region', { name: 'Weather', exact: true });

async function answerForecast(page: Page, celsius: readonly number[] = EVENING_C): Promise<void> {
  await page.route(FORECAST, (route) =>
    route.fulfill(jsonAnswer(forecastAnswer({ celsius, fetchedAt: NOW }))),
  );
}

async function follow(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Get the forecast' }).click();
  await page.getByRole('button', { name: 'Get the forecast' }).click();
  await expect(page.getByRole('dialog')).toBeHidden();
}

test.describe('the weather of a night', () => {
  test('comes from the place, says whose it is and how old, and typed hours stand before it', async ({
    night,
  }) => {
    await answerForecast(night);
    await answerPlaces(night);
    await night.goto('/');
    await expect(weather(night)).toContainText('none');
    await follow(night);
    await expect(weather(night)).toContainText('fresh');
    await expect(weather(night)).toContainText(
      'Open-Meteo, asked for just now; it does not say when it was made.',
    );
    await expect(
      weather(night).getByRole('link', { name: 'Weather data by Open-Meteo.com' }),
    ).toHaveAttribute('href', 'https://open-meteo.com/');
    await expect(weather(night)).toContainText('its ensemble spreads by');
    await expect(weather(night)).toContainText('The hours you typed');
    await openNumbers(night);
    await expect(night.getByRole('cell', { name: 'typed' }).first()).toBeVisible();
    await weather(night).getByRole('button', { name: 'Go by the forecast alone' }).click();
    await expect(night.getByRole('cell', { name: 'typed' })).toHaveCount(0);
    await expect(
      night.getByRole('cell', { name: 'forecast, Open-Meteo', exact: true }).first(),
    ).toBeVisible();
    await takeBack(night, 'Typed hours taken away');
    await expect(night.getByRole('cell', { name: 'typed' }).first()).toBeVisible();
    expect(await accessFaults(night)).toEqual([]);
    expect(await overflows(night)).toBe(false);
  });

  test('is on the screen with its age while the server hangs, and not only when it is given up', async ({
    night,
  }) => {
    await answerForecast(night);
    await answerPlaces(night);
    await night.goto('/');
    await follow(night);
    await expect(weather(night)).toContainText('fresh');
    await night.unroute(FORECAST);
    const hanging: Route[] = [];
    await night.route(FORECAST, (route) => void hanging.push(route));
    await night.clock.setFixedTime(NOW + 5 * 3_600_000);
    await night.reload({ waitUntil: 'commit' });
    await expect(weather(night).getByText('old', { exact: true })).toBeVisible();
    await expect(weather(night)).not.toContainText('No newer forecast');
    await expect(weather(night)).toContainText('asked for 5 h ago');
    await expect(night.getByRole('region', { name: 'Next', exact: true })).toBeVisible();
    expect(hanging.length).toBeGreaterThan(0);
    // As long as the page waits for its server.
    await night.clock.runFor(12_000);
    await expect(weather(night)).toContainText('No newer forecast: ', {
      timeout: 20_000,
    });
  });

  test('says in words why none came, and goes on by itself', async ({ night }) => {
    await answerPlaces(night);
    const detail = 'No weather service answered (Open-Meteo took too long). Try again in 30 seconds.';
    await night.route(FORECAST, (route) =>
      route.fulfill(jsonAnswer({ type: 'about:blank', status: 503, detail })),
    );
    await night.goto('/');
    await follow(night);
    await expect(weather(night)).toContainText('No forecast came: bad answer.');
    await expect(weather(night)).toContainText('something unreadable');
    await night.unroute(FORECAST);
    await answerForecast(night);
    await weather(night).getByRole('button', { name: 'Ask again now' }).click();
    await expect(weather(night)).toContainText('fresh');
  });

  test('shows what the service left out', async ({ night }) => {
    await answerPlaces(night);
    await night.route(FORECAST, (route) =>
      route.fulfill(
        jsonAnswer(
          forecastAnswer({
            fetchedAt: NOW,
            more: {
              missing: ['2027-01-17T06:00:00Z', '2027-01-17T07:00:00Z'],
              tries: [{ source: 'met-norway', problem: { code: 'timeout' } }],
            },
          }),
        ),
      ),
    );
    await night.goto('/');
    await follow(night);
    await expect(weather(night)).toContainText('No value for 00:00 to 01:00');
    await expect(weather(night)).toContainText('MET Norway took too long.');
  });

  test('keeps the name of a service on one line, however wide the screen', async ({ night }) => {
    await answerPlaces(night);
    const tries = (['met-norway', 'open-meteo'] as const).map((source) => ({
      source,
      problem: { code: 'timeout' as const },
    }));
    await night.route(FORECAST, (route) =>
      route.fulfill(jsonAnswer(forecastAnswer({ fetchedAt: NOW, more: { tries } }))),
    );
    await night.goto('/');
    await follow(night);
    await expect(weather(night)).toContainText('MET Norway took too long and Open-Meteo took too long.');
    for (let width = 280; width <= 420; width += 4) {
      await night.setViewportSize({ width, height: 740 });
      expect(await tornIn(weather(night), HYPHENED), `${width}`).toEqual([]);
    }
  });
});

test.describe('the place of a forecast', () => {
  const form = (page: Page) => page.getByRole('dialog', { name: 'Forecast' });
  const open = async (page: Page) => {
    await answerForecast(page);
    await page.goto('/');
    await page.getByRole('link', { name: 'Get the forecast' }).click();
    await expect(form(page).getByRole('textbox', { name: 'Latitude' })).toHaveValue('47.42');
  };

  test('is found by name with the keyboard alone', async ({ night }) => {
    await answerPlaces(night, [
      {
        name: 'Orvana Falls',
        region: 'Itasca',
        latitude: 47.3,
        longitude: -93.5,
        elevationM: 410,
        timezone: null,
      },
      { name: 'Orvana', region: 'Cass', latitude: 46.9, longitude: -94.2, elevationM: 405, timezone: null },
    ]);
    await open(night);
    const search = form(night).getByRole('combobox', { name: 'Search a place' });
    await search.fill('Orv');
    await expect(form(night).getByText('2 places found.')).toBeVisible();
    await night.keyboard.press('ArrowDown');
    await night.keyboard.press('ArrowDown');
    await night.keyboard.press('Enter');
    await expect(form(night).getByRole('textbox', { name: 'Latitude' })).toHaveValue('46.9');
    await expect(form(night).getByRole('textbox', { name: 'Name of the place' })).toHaveValue('Orvana');
    await expect(form(night).getByText(/The ground there is 1,220\sft/)).toBeVisible();
    await form(night)
      .getByRole('button', { name: /Use 1,220/ })
      .click();
    await expect(form(night).getByRole('textbox', { name: 'Elevation of the track' })).toHaveValue('1220.47');
    expect(await accessFaults(night)).toEqual([]);
    expect(await overflows(night)).toBe(false);
  });

  test('is asked for again in words where no place has that name, or the server has no answer', async ({
    night,
  }) => {
    await answerPlaces(night);
    await open(night);
    const search = form(night).getByRole('combobox', { name: 'Search a place' });
    await search.fill('Nowhere at all');
    await expect(
      form(night).getByText(/No place called “Nowhere at all” is known\. Try the nearest town/),
    ).toBeVisible();
    await night.unroute(PLACES);
    await night.route(PLACES, (route) =>
      route.fulfill({ status: 200, contentType: 'text/html', body: '<html>' }),
    );
    await search.fill('Elsewhere');
    await expect(form(night).getByText(/something unreadable\. Type the coordinates instead/)).toBeVisible();
  });

  test('refuses coordinates that are none, and says what to type', async ({ night }) => {
    await answerPlaces(night);
    await open(night);
    await form(night).getByRole('textbox', { name: 'Latitude' }).fill('97.42');
    await form(night).getByRole('button', { name: 'Get the forecast' }).click();
    await expect(form(night).getByRole('textbox', { name: 'Latitude' })).toBeFocused();
    await expect(
      form(night)
        .getByText(/“97\.42” is not a latitude\..*such as 47\.42/)
        .first(),
    ).toBeVisible();
  });

  test('is taken from the device where that is allowed', async ({ night, context }) => {
    await answerPlaces(night);
    await context.grantPermissions(['geolocation']);
    await context.setGeolocation({ latitude: 46.12346, longitude: -94.5 });
    await open(night);
    await form(night).getByRole('button', { name: 'Use my location' }).click();
    await expect(form(night).getByRole('textbox', { name: 'Latitude' })).toHaveValue('46.1235');
  });

  test('is asked for otherwise where the location is denied', async ({ night, context }) => {
    await answerPlaces(night);
    await context.clearPermissions();
    await open(night);
    await form(night).getByRole('button', { name: 'Use my location' }).click();
    await expect(
      form(night).getByText(/The location was not allowed\. Allow it .* search for the place, or type/),
    ).toBeVisible();
  });
});
