import { expect, type Page } from '@playwright/test';
import { instantOf } from './clock';
import { clubNightOf } from './club-hand';
import { NIGHT_STATES } from './night-states';
import { openState } from './open-state';
import { DATES, JETS, tornIn, UNITS } from './torn';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago' });
test.setTimeout(180_000);

/** The narrowest screens: what holds there has room everywhere. */
const WIDTHS = [280, 320, 360] as const;

const torn = (page: Page) => tornIn(page.locator('body'), JETS, DATES);

/** Words of the night's figure that take more lines than they may: one, and one more for every three jets after the first. */
function wrapped(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const figure = document.querySelector('section[aria-label="The night"] table');
    const leaves = [
      ...(figure?.querySelectorAll('th, th span, td strong, td > span, td > span > span') ?? []),
    ].filter(
      (cell) =>
        cell.getBoundingClientRect().width > 1 && [...cell.childNodes].some(({ nodeType }) => nodeType === 3),
    );
    const range = document.createRange();
    return leaves.flatMap((cell) => {
      const words = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
      const tops: number[] = [];
      for (let node = words.nextNode(); node !== null; node = words.nextNode()) {
        // What is for ears only has no lines.
        if ((node.parentElement?.getBoundingClientRect().width ?? 0) <= 1) continue;
        range.selectNodeContents(node);
        for (const { width, bottom } of range.getClientRects()) if (width > 1) tops.push(Math.round(bottom));
      }
      // Words and figures of one line may differ by a pixel.
      const lines = tops
        .sort((a, b) => a - b)
        .filter((top, i) => i === 0 || top - (tops[i - 1] ?? 0) > 4).length;
      const text = cell.textContent?.trim() ?? '';
      const jets = text.match(/\b\d{2,4}(\.\d)?\b/g)?.length ?? 0;
      const most = /:\d\d/.test(text) ? 1 : Math.max(1, Math.ceil(jets / 3));
      return lines > most ? [`${text} (${lines} lines)`] : [];
    });
  });
}

/** Jets of what is in now that touch each other or reach out of the page. */
function crowded(page: Page): Promise<readonly string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('section[aria-label="In now"] p')].flatMap((line) => {
      const jets = [...line.querySelectorAll('span')].filter(({ textContent }) =>
        /^[\d.]+ $/.test(textContent ?? ''),
      );
      return jets.flatMap((jet, i) => {
        const range = document.createRange();
        range.selectNodeContents(jet);
        const { left, right, top } = range.getBoundingClientRect();
        const next = jets[i + 1]?.getBoundingClientRect();
        const meets = next !== undefined && Math.abs(next.top - top) < 20 && next.left - right < 6;
        return meets || left < 0 || right > window.innerWidth - 8 ? [jet.textContent ?? ''] : [];
      });
    }),
  );
}

/** States with other jets, other words in the figure, or both. */
const SHOWN = [
  'before',
  'late',
  'missed',
  'steep',
  'one',
  'six',
  'halves',
  'sixty',
  'out',
  'stop',
  'no-hours',
];

for (const state of NIGHT_STATES.filter(({ name }) => SHOWN.includes(name)))
  test(`nothing that is read as one is torn on the narrowest screens: "${state.name}"`, async ({ night }) => {
    await openState(night, state);
    for (const width of WIDTHS) {
      await night.setViewportSize({ width, height: 740 });
      expect(await torn(night), `${width}`).toEqual([]);
      expect(await wrapped(night), `${width}`).toEqual([]);
      expect(await crowded(night), `${width}`).toEqual([]);
    }
  });

test('nor on any other page', async ({ night }) => {
  await night.clock.setFixedTime(instantOf('19:40'));
  await night.goto('/');
  await expect(night.getByRole('region', { name: 'Next', exact: true })).toBeVisible();
  const look = async (what: string) => {
    for (const width of WIDTHS) {
      await night.setViewportSize({ width, height: 740 });
      expect(await torn(night), `${what} at ${width}`).toEqual([]);
    }
  };
  await night.goto('/#numbers');
  await expect(night.getByRole('region', { name: 'What a swap is worth' })).toBeVisible();
  await look('numbers');
  await night.goto('/machines');
  await night.getByRole('button', { name: /^Baselines, parts, learning/ }).click();
  await expect(night.getByRole('heading', { name: 'Baselines', exact: true })).toBeVisible();
  await look('the history of a machine');
  for (const [page, there] of [
    ['/log', 'How was the last run?'],
    ['/trail', 'Seasons side by side'],
    ['/machines', 'Machines'],
  ] as const) {
    await night.goto(page);
    await expect(night.getByRole('heading', { name: there })).toBeVisible();
    await look(page);
  }
  await clubNightOf(night, 6);
  await expect(night.getByRole('heading', { name: 'Borrowing' })).toBeVisible();
  await look('/club');
});

/** Brackets of a formula on more than one line, though there is room for them on one, and tables that scroll. */
function brokenFormulae(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const tables = [...document.querySelectorAll('main table')].filter(
      (table) => table.scrollWidth > (table.parentElement?.clientWidth ?? 0),
    );
    const wholes = [...document.querySelectorAll<HTMLElement>('main figure span')].filter((whole) => {
      const room = whole.closest('p')?.clientWidth ?? 0;
      const lines = whole.offsetHeight / Number.parseFloat(getComputedStyle(whole).lineHeight);
      return lines > 1.5 && whole.offsetWidth < room - 1;
    });
    return [...tables, ...wholes].map(({ textContent }) => textContent.slice(0, 60));
  });
}

test('how it works: numbers with their units and brackets whole, and on a phone no table scrolls', async ({
  night,
}) => {
  await night.goto('/about');
  await expect(night.getByRole('heading', { name: 'Power and the choice' })).toBeVisible();
  for (const width of WIDTHS) {
    await night.setViewportSize({ width, height: 740 });
    expect(await tornIn(night.locator('main'), UNITS), `${width}`).toEqual([]);
    if (width === 360) expect(await brokenFormulae(night)).toEqual([]);
  }
});

test('words that are pressed beside each other stand on one line, and begin and end where the page does', async ({
  night,
}) => {
  await openState(night, NIGHT_STATES[1]!);
  for (const width of WIDTHS) {
    await night.setViewportSize({ width, height: 740 });
    const words = await night.evaluate(() => {
      const range = document.createRange();
      return ['Pages', 'Display', 'Running late?', 'Knocked out', 'Other jets'].map((word) => {
        const pressed = [...document.querySelectorAll('summary, button')].find(
          ({ textContent }) => textContent?.trim() === word,
        );
        if (pressed === undefined) return { word, top: 0, bottom: 0, left: 0, right: 0, under: '' };
        range.selectNodeContents(pressed);
        const { top, bottom, left, right } = range.getBoundingClientRect();
        return { word, top, bottom, left, right, under: getComputedStyle(pressed).textUnderlineOffset };
      });
    });
    const [pages, display, late, out, jets] = words;
    expect(pages?.bottom).toBeGreaterThan(0);
    expect(pages?.bottom).toBeCloseTo(display?.bottom ?? 0, 1);
    expect(pages?.under).toBe(display?.under);
    expect(late?.bottom).toBeCloseTo(out?.bottom ?? 0, 1);
    const margin = 16;
    for (const each of [display, out, jets]) expect(each?.right, each?.word).toBeCloseTo(width - margin, 0);
    expect(late?.left).toBeCloseTo(margin, 0);
  }
});
