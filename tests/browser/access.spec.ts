import { type BrowserContext, expect, type Page, type Route } from '@playwright/test';
import { EVENING_C, forecastAnswer } from '../weather-page/forecast-answer';
import { EVENING } from './clock';
import { soundStop } from './keyboard';
import { faultsInEveryLook, test } from './watched-page';
import { answerPlaces, jsonAnswer } from './weather-answers';

// The forecasts here are dated.
test.use({ now: EVENING });

const NOW = Date.parse(EVENING);
const FORECAST = '**/api/forecast?**';

/** A night that one setting holds to the end, doubt and all. */
const MILD_C = EVENING_C.map((celsius) => Math.max(celsius, -19));

const region = (page: Page, name: string) => page.getByRole('region', { name, exact: true });

/** Each state is looked at by day, by night and with large text; where it changes only a part, that part of it. */
async function expectClean(page: Page, state: string, within?: string): Promise<void> {
  expect(await faultsInEveryLook(page, within), state).toEqual([]);
}

async function answerForecast(page: Page, more: object = {}): Promise<void> {
  await page.unroute(FORECAST);
  await page.route(FORECAST, (route) =>
    route.fulfill(jsonAnswer({ ...forecastAnswer({ fetchedAt: NOW, celsius: MILD_C }), ...more })),
  );
}

async function askAgain(page: Page): Promise<void> {
  await region(page, 'Weather').getByRole('button', { name: 'Ask again now' }).click();
}

/** The same night changed in another tab while its form is open in this one. */
async function changeElsewhere(context: BrowserContext): Promise<void> {
  const other = await context.newPage();
  await other.route(FORECAST, (route) => route.abort());
  await other.goto('/#event');
  await other.getByRole('textbox', { name: 'Name of the event' }).fill('Moved to Sunday');
  await other.getByRole('button', { name: 'Save event' }).click();
  await expect(other.getByRole('heading', { name: 'Moved to Sunday' })).toBeVisible();
  await other.close();
}

test('the night can be used by all in every state it can be in', async ({ night, context }) => {
  test.setTimeout(120_000);
  await answerPlaces(night);
  await night.goto('/');
  await region(night, 'The night in one picture').scrollIntoViewIfNeeded();
  await expect(night.locator('.recharts-surface').first()).toBeVisible();
  await expectClean(night, 'a plan');

  const hanging: Route[] = [];
  await night.route(FORECAST, (route) => void hanging.push(route));
  await night.getByRole('link', { name: 'Get the forecast' }).click();
  await night.getByRole('button', { name: 'Get the forecast' }).click();
  await expect(night.getByText('Asking for the forecast…')).toBeVisible();
  await expectClean(night, 'loading', '#weather');

  await hanging[0]?.fulfill(
    jsonAnswer({ type: 'about:blank', status: 503, detail: 'No weather service answered.' }),
  );
  await expect(region(night, 'Weather')).toContainText('No forecast came: ');
  await expectClean(night, 'all sources failed', '#weather');

  await answerForecast(night, {
    freshness: 'stale',
    fetchedAt: new Date(NOW - 13 * 3_600_000).toISOString(),
  });
  await askAgain(night);
  await expect(region(night, 'Weather')).toContainText('too old');
  await night.getByRole('button', { name: 'Go by the forecast alone' }).click();
  await night.getByRole('link', { name: 'Numbers' }).click();
  await expect(night.getByRole('table', { name: /^Air hour by hour/ })).toBeVisible();
  await expect(night.getByRole('cell', { name: 'typed' })).toHaveCount(0);
  await expectClean(night, 'a stale forecast');

  await night.getByRole('button', { name: 'Other jets' }).click();
  for (const [i, main] of ['420', '410', '420'].entries())
    await night.getByLabel(`Main jet, carburettor ${i + 1}`).selectOption(main);
  await night.getByRole('button', { name: 'Done: it is in' }).click();
  await expect(region(night, 'Next')).toContainText('No swap');
  await expect(region(night, 'The call')).toContainText('No swap tonight: 420 410 420 holds all 8 runs.');
  await expectClean(night, 'no swap tonight');

  await night.goto('/#event');
  await night.getByRole('textbox', { name: 'Name of the event' }).fill('Moved to Friday');
  await changeElsewhere(context);
  await night.getByRole('button', { name: 'Save event' }).click();
  await expect(night.getByText(/changed elsewhere, perhaps in another tab/)).toBeVisible();
  await night.getByRole('button', { name: 'Cancel' }).evaluate((cancel) => {
    // The bar at the foot covers what scrolls under it; at the end of the form it covers nothing.
    for (let box = cancel.parentElement; box !== null; box = box.parentElement)
      box.scrollTop = box.scrollHeight;
  });
  await expectClean(night, 'a conflict with another tab', 'dialog[open]');
  await night.getByRole('button', { name: 'Cancel' }).click();

  await night.getByRole('button', { name: 'Display' }).click();
  await expectClean(night, 'display', 'dialog[open]');
  await night.keyboard.press('Escape');
  await night.getByRole('link', { name: 'At the track' }).click();
  await expectClean(night, 'at the track');
  await night.goBack();

  await night.getByRole('button', { name: 'Share this night' }).click();
  const link = await night.getByRole('textbox', { name: 'Link to this night' }).inputValue();
  await night.goto(link);
  // It is the night of this browser, made its owner's own above.
  await expect(night.getByRole('button', { name: 'Keep it a second time' })).toBeVisible();
  await expectClean(night, 'a preview');
});

/** The demo night as the browser keeps it, without its typed hours. */
function takeHoursAway(page: Page): Promise<void> {
  return page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opened = indexedDB.open('heavy-air');
        opened.onerror = () => reject(opened.error);
        opened.onsuccess = () => {
          const transaction = opened.result.transaction('records', 'readwrite');
          const records = transaction.objectStore('records');
          const read = records.get(['events', 'demo-night']);
          read.onsuccess = () =>
            records.put({ ...read.result, value: { ...read.result.value, typed: null } });
          transaction.oncomplete = () => {
            opened.result.close();
            resolve();
          };
        };
      }),
  );
}

test('a night without hours and a night that is opening can be used by all', async ({ night }) => {
  await night.addInitScript(() => {
    // A browser that never opens its database.
    if (window.location.search !== '?stuck') return;
    const { open } = IDBFactory.prototype;
    IDBFactory.prototype.open = function silent(...given) {
      return Object.assign(open.apply(this, given), { addEventListener: () => undefined });
    };
  });
  await night.goto('/');
  await expect(region(night, 'Next')).toBeVisible();
  await takeHoursAway(night);
  await night.reload();
  await expect(night.getByText(/^The plan needs the temperature of each hour\./)).toBeVisible();
  await expectClean(night, 'empty');

  await night.goto('/?stuck');
  await expect(night.getByText('Opening the night…')).toBeVisible();
  await expectClean(night, 'opening');
});

/** Every page as a first visitor has it, opened up as far as it goes. */
const PAGES = [
  { path: '/trail', there: 'Print the card' },
  { path: '/club', there: 'Start a club night' },
  { path: '/machines', there: 'Add a machine', press: /^Baselines, parts, learning/ },
  { path: '/log', there: 'Add a run by hand', press: 'Round 4: Rich' },
  { path: '/open', there: 'Open the link' },
  { path: '/about', there: 'How it works' },
] as const;

test('the other pages can be used by all', async ({ night }) => {
  test.setTimeout(120_000);
  // 21:40 in the demo night: four rounds are over.
  await night.clock.setFixedTime('2027-01-17T03:40:00Z');
  await night.goto('/');
  await expect(region(night, 'Next')).toBeVisible();
  for (const page of PAGES) {
    await night.goto(page.path);
    await expect(night.locator('main :is(h1, a, button)', { hasText: page.there }).first()).toBeVisible();
    if ('press' in page) await night.getByRole('button', { name: page.press }).first().click();
    for (const summary of await night.locator('main summary').filter({ visible: true }).all())
      await summary.click();
    await expectClean(night, page.path);
  }
});

/** Everything drawn or framed that a person must be able to tell from the page behind it, with its contrast to it. */
function faintParts(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const channels = (colour: string) => (colour.match(/[\d.]+/g) ?? []).map(Number);
    /** WCAG 2.2, "relative luminance" and "contrast ratio". */
    const luminance = (colour: string) => {
      const [r = 0, g = 0, b = 0] = channels(colour).map((part) =>
        part / 255 <= 0.04045 ? part / 255 / 12.92 : ((part / 255 + 0.055) / 1.055) ** 2.4,
      );
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const paper = getComputedStyle(document.documentElement).backgroundColor;
    const contrast = (colour: string) => {
      const [light = 0, dark = 0] = [luminance(colour), luminance(paper)].sort((a, b) => b - a);
      // A colour of no opacity is none.
      return channels(colour)[3] === 0 ? 1 : (light + 0.05) / (dark + 0.05);
    };
    const parts = (selector: string, property: string, least: number) => {
      const found = [...document.querySelectorAll(selector)].filter((element) => element.checkVisibility());
      const faint = found.filter(
        (element) => contrast(getComputedStyle(element).getPropertyValue(property)) < least,
      );
      if (found.length === 0) return [`nothing is ${selector}`];
      return faint.map((element) => `${property} of ${selector}: ${element.outerHTML.slice(0, 120)}`);
    };
    // The browser paints paper behind every word but those that say they bring a ground of their own.
    const onPaper = [...document.querySelectorAll('body :not(script, svg *)')].filter((element) => {
      const { color, forcedColorAdjust } = getComputedStyle(element) as CSSStyleDeclaration & {
        readonly forcedColorAdjust: string;
      };
      const words = [...element.childNodes].some((node) => node.nodeType === 3 && node.nodeValue?.trim());
      return words && element.checkVisibility() && forcedColorAdjust !== 'none' && contrast(color) < 4.5;
    });
    return [
      ...onPaper.map((element) => `paper on paper: ${element.outerHTML.slice(0, 120)}`),
      ...parts('.recharts-surface text', 'fill', 4.5),
      ...parts('.recharts-line-curve', 'stroke', 4.5),
      ...parts('.recharts-surface [class$=_steps]', 'stroke', 4.5),
      ...parts('.recharts-surface [class$=_window]', 'stroke', 3),
      ...parts('button', 'border-top-color', 3),
      ...parts('select', 'border-top-color', 3),
      ...parts('label:has(:checked)', 'background-color', 3),
      ...parts('section svg [class$=_pointer]', 'fill', 3),
      ...parts('table svg [class$=_line]', 'stroke', 3),
      ...parts('table svg [class$=_dot]', 'fill', 3),
    ];
  });
}

/** The stripes that tell lean and rich: their colours against that of the page. */
function hatches(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const paper = getComputedStyle(document.documentElement).backgroundColor;
    return [...document.querySelectorAll('.recharts-surface pattern')].flatMap((pattern) => {
      const fills = [...pattern.querySelectorAll('rect')].map((rect) => getComputedStyle(rect).fill);
      return fills[0] === paper && fills[1] !== paper ? [pattern.getAttribute('patternTransform') ?? ''] : [];
    });
  });
}

/** Whatever moves by itself. */
function moving(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('body *')].flatMap((element) => {
      const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(element);
      const still = animationName === 'none' && /^[0s, ]+$/.test(transitionDuration);
      return still && scrollBehavior === 'auto' ? [] : [element.outerHTML.slice(0, 120)];
    }),
  );
}

test('in a person’s own colours all that tells is still there, and nothing moves', async ({ night }) => {
  await night.emulateMedia({ forcedColors: 'active', colorScheme: 'dark', reducedMotion: 'reduce' });
  await night.goto('/');
  await region(night, 'The night in one picture').scrollIntoViewIfNeeded();
  await expect(night.locator('.recharts-surface').first()).toBeVisible();
  for (const colorScheme of ['dark', 'light'] as const) {
    await night.emulateMedia({ colorScheme });
    expect(await faintParts(night), colorScheme).toEqual([]);
    expect(await hatches(night), colorScheme).toEqual(['rotate(45)', 'rotate(-45)']);
  }
  expect(await moving(night)).toEqual([]);
  expect(await night.evaluate(() => document.getAnimations().length)).toBe(0);
  await night.keyboard.press('Tab');
  await soundStop(night);
});

test('an example in an empty field is as plain as other quiet words', async ({ night }) => {
  await night.goto('/log');
  await night.getByRole('button', { name: 'Add a run by hand' }).click();
  const time = night.locator('dialog[open] input[placeholder]').first();
  await expect(time).toBeVisible();
  for (const colorScheme of ['light', 'dark'] as const) {
    await night.emulateMedia({ colorScheme });
    const [shown, quiet] = await time.evaluate((input) => {
      const words = input.parentElement!.appendChild(document.createElement('span'));
      words.style.color = 'var(--ink-2)';
      const { color } = getComputedStyle(words);
      words.remove();
      return [getComputedStyle(input, '::placeholder').color, color];
    });
    expect(shown, colorScheme).toBe(quiet);
  }
});
