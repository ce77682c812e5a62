import { expect, type Page } from '@playwright/test';
import { FORMS } from './forms';
import { test } from './watched-page';

/** Every address with measures or times on it, and what is there once it can be read. About shows sums, which are in SI. */
const PLACES = [['/', 'Display'], ['/#track', 'Running late?'], ['/#numbers', 'Display'], ...FORMS] as const;

const TWELVE_HOURS = /\b\d{1,2}(:\d\d)?\s?[ap]m\b/;
/** A time of the other clock; "8:00 pm" is none. */
const TWENTY_FOUR_HOURS = /(?<![\d:.])\d{1,2}:\d\d(?![:\d])(?!\s?[ap]m\b)/;
const OF_THE_METRE = /kg\/m³|°C|\d\s(hPa|mbar|kPa|km|m|K)\b|\blitres?\b|\bper 100 km\b|\bmetres?\b/;
const OF_THE_FOOT = /°F|\d\s(inHg|ft|mi)\b|\bgallons?\b|\bfeet\b|\bof standard\b/;

/** What is read, with everything unfolded: words, what stands in fields, and what could stand there. */
async function readAll(page: Page): Promise<readonly string[]> {
  const open = page.locator('dialog[open]');
  const whole = (await open.count()) > 0 ? open.last() : page.locator('body');
  const others = await whole.evaluate((within) => {
    for (const folded of within.querySelectorAll('details')) folded.open = true;
    const fields = [...within.querySelectorAll<HTMLInputElement>('input[type=text], input:not([type])')];
    return [
      ...fields.flatMap(({ value, placeholder }) => [value, placeholder]),
      ...[...within.querySelectorAll('[aria-label]')].map((each) => each.getAttribute('aria-label') ?? ''),
    ];
  });
  return [...(await whole.allInnerTexts()).join('\n').split('\n'), ...others];
}

/** Times and measures that are cut in two by the end of a line. */
function brokenWords(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const whole = document.querySelector('dialog[open]') ?? document.body;
    const walker = document.createTreeWalker(whole, NodeFilter.SHOW_TEXT);
    const broken: string[] = [];
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      for (const { 0: words, index } of (node.textContent ?? '').matchAll(
        /\d[\d:.,]*(\s?[ap]m\b|\u00a0\S+)?/g,
      )) {
        const range = document.createRange();
        range.setStart(node, index);
        range.setEnd(node, index + words.length);
        const tops = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        if (tops.size > 1) broken.push(words);
      }
    }
    return broken;
  });
}

async function offences(page: Page, strange: readonly RegExp[]): Promise<readonly string[]> {
  test.setTimeout(180_000);
  const found = new Set<string>();
  for (const [path, act] of PLACES) {
    await page.goto(path);
    await page.getByRole('button', { name: act }).last().waitFor();
    for (const text of await readAll(page))
      if (strange.some((pattern) => pattern.test(text))) found.add(`${path} ${text.slice(0, 120)}`);
    for (const width of [360, 320]) {
      await page.setViewportSize({ width, height: 740 });
      for (const words of await brokenWords(page)) found.add(`${path} at ${width} px cut in two: ${words}`);
    }
  }
  return [...found];
}

test.describe('whoever reads °F and am and pm', () => {
  test.use({ locale: 'en-US' });

  test('meets no other measure and no other clock, in words or in a form', async ({ night }) => {
    await night.goto('/');
    await night.getByRole('region', { name: 'The call' }).waitFor();
    expect(await offences(night, [OF_THE_METRE, TWENTY_FOUR_HOURS])).toEqual([]);
  });
});

test('whoever reads °C and 24 hours meets no other measure and no other clock', async ({ night }) => {
  await night.goto('/');
  await night.getByRole('region', { name: 'The call' }).waitFor();
  await night.getByRole('button', { name: 'Display' }).click();
  for (const unit of ['°C', 'hPa', 'metres'])
    await night.getByRole('radio', { name: unit, exact: true }).check();
  await night.getByRole('button', { name: 'Close' }).click();
  expect(await offences(night, [OF_THE_FOOT, TWELVE_HOURS])).toEqual([]);
});
