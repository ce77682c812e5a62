import { expect, type Page } from '@playwright/test';
import { PAGES } from '@/components/shell/pages';
import { dayText } from '@/lib/words/day-text';
import { instantOf } from './clock';
import { clubNightOf } from './club-hand';
import { headingPages, pagesOf } from './pdf-pages';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago', now: '19:40' });
test.setTimeout(120_000);

const PX_PER_MM = 96 / 25.4;
/** ISO 216 and ANSI/ASME Y14.1, less the margin of 8 mm on each side. */
const PAPERS = [
  { format: 'A4', width: 210 - 16, height: 297 - 16 },
  { format: 'Letter', width: 215.9 - 16, height: 279.4 - 16 },
] as const;
const WINDOWS = [
  { width: 360, height: 740 },
  { width: 1280, height: 800 },
] as const;

async function openTrail(page: Page): Promise<void> {
  await page.goto('/trail');
  await expect(page.getByRole('button', { name: 'Print the card' })).toBeVisible();
}

/** As a browser lays a page out for paper of that width. */
async function laidOut(page: Page, { width, height }: { readonly width: number; readonly height: number }) {
  await page.setViewportSize({
    width: Math.round(width * PX_PER_MM),
    height: Math.round(height * PX_PER_MM),
  });
  await page.emulateMedia({ media: 'print' });
  // What is measured anew for the new width is measured by then.
  await page.evaluate(
    () => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))),
  );
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
}

test('the trail is two sheets, each full, on both papers and from every window', async ({ night }) => {
  for (const window of WINDOWS) {
    await night.setViewportSize(window);
    await openTrail(night);
    for (const { format } of PAPERS) {
      const pdf = await night.pdf({ format, preferCSSPageSize: true });
      expect(pagesOf(pdf).count, `${format}, ${window.width} px`).toBe(2);
    }
  }
  for (const paper of PAPERS) {
    await openTrail(night);
    await laidOut(night, paper);
    const parts = await night.getByRole('main').evaluate((main) => {
      const boxOf = (name: string) =>
        [...main.querySelectorAll('section')]
          .find((section) => section.querySelector('h2')?.textContent === name)
          ?.getBoundingClientRect();
      const { top } = main.getBoundingClientRect();
      const [cautions, ride, card] = [
        'Before you touch it',
        'A ride: one setting for all of it',
        'The jet card',
      ].map(boxOf);
      return {
        first: (cautions?.bottom ?? 0) - top,
        second: (card?.bottom ?? 0) - (ride?.top ?? 0),
        dial: main.querySelector('figure svg')?.getBoundingClientRect().width,
      };
    });
    const least = 0.9 * paper.height * PX_PER_MM;
    expect(parts.first, paper.format).toBeGreaterThanOrEqual(least);
    expect(parts.second, paper.format).toBeGreaterThanOrEqual(least);
    // Of paper, not of the window it was printed from.
    expect(parts.dial, paper.format).toBe(400);
    await night.emulateMedia({ media: 'screen' });
    await night.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  }
});

// Twelve jobs fill a page, six do not.
for (const [racers, beside] of [
  [6, 'What to do, by the clock'],
  [12, 'Racers by the hour'],
] as const)
  test(`the club’s cautions stand alone on no page: ${racers} racers`, async ({ night }) => {
    await clubNightOf(night, racers);
    await night.reload();
    await expect(night.getByRole('heading', { name: 'Borrowing' })).toBeAttached();
    await night.waitForLoadState('networkidle');
    for (const { format } of PAPERS) {
      const pages = headingPages(
        await night.pdf({ format, preferCSSPageSize: true, tagged: true, outline: true }),
      );
      expect(pages.get('Before you touch it'), format).toBeGreaterThan(0);
      expect(pages.get('Before you touch it'), format).toBe(pages.get(beside));
    }
  });

test('on the paper of every page nothing is under 9 points, and no table goes over its edge', async ({
  night,
}) => {
  await night.goto('/');
  await expect(night.getByRole('region', { name: 'Next', exact: true })).toBeVisible();
  for (const { href } of PAGES)
    for (const paper of PAPERS) {
      await night.emulateMedia({ media: 'screen' });
      await night.goto(href);
      await expect(night.getByRole('heading', { level: 1 })).toBeVisible();
      await night.waitForLoadState('networkidle');
      await laidOut(night, paper);
      const faults = await night.evaluate(() => {
        const PT = 0.75;
        const shown = [...document.querySelectorAll<HTMLElement>('main *')].filter((element) =>
          element.checkVisibility(),
        );
        const sizeOf = (element: Element) => Number.parseFloat(getComputedStyle(element).fontSize) * PT;
        const worded = shown.filter((element) =>
          [...element.childNodes].some(
            ({ nodeType, nodeValue }) => nodeType === 3 && nodeValue?.trim() !== '',
          ),
        );
        // At size 0 it is left out of the print.
        const small = worded.filter((element) => sizeOf(element) > 0 && sizeOf(element) < 8.99);
        const wide = shown.filter(
          (element) =>
            element.tagName === 'TABLE' && element.getBoundingClientRect().right > window.innerWidth + 1,
        );
        // Set by a screen's points, "410" comes apart on paper: "4 10".
        const torn = worded.filter(
          (element) => getComputedStyle(element).textRendering !== 'geometricprecision',
        );
        return [...small, ...wide, ...torn].map(({ outerHTML }) => outerHTML.slice(0, 120));
      });
      expect(faults, `${href} on ${paper.format}`).toEqual([]);
    }
});

test('every sheet of paper is given the title of what it is of', async ({ night }) => {
  const title = () =>
    night.evaluate(() => {
      window.dispatchEvent(new Event('beforeprint'));
      return CSS.supports(
        'content',
        getComputedStyle(document.documentElement).getPropertyValue('--sheet-title'),
      )
        ? getComputedStyle(document.documentElement).getPropertyValue('--sheet-title').replaceAll('\\', '')
        : 'no words';
    });
  await night.goto('/about');
  await expect(night.getByRole('heading', { level: 1 })).toBeVisible();
  await expect.poll(title).toBe('"How it works"');
  await clubNightOf(night, 1);
  await expect.poll(title).toBe(`"Saturday on the lake, ${dayText(instantOf('20:00'), 'America/Chicago')}"`);
});

test('what a paper cannot do is not asked on it', async ({ night }) => {
  for (const [page, said, asked] of [
    ['/log', 'No run yet.', 'or add one by hand'],
    ['/machines', 'Mains 410 400 410', 'has not promised'],
    ['/open', 'Open a link', 'Paste a link'],
  ] as const) {
    await night.goto('/');
    await expect(night.getByRole('region', { name: 'Next', exact: true })).toBeVisible();
    await night.goto(page);
    await expect(night.locator('main').getByText(asked).first()).toBeVisible();
    await night.emulateMedia({ media: 'print' });
    await expect(night.locator('main').getByText(asked).first()).toBeHidden();
    await expect(night.locator('main').getByText(said).first()).toBeVisible();
    await night.emulateMedia({ media: 'screen' });
  }
});
