import { expect, type Page } from '@playwright/test';
import { clubHand, clubNightOf, enterEvent, enterHours } from './club-hand';
import { pagesOf } from './pdf-pages';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago', now: '18:15' });

async function printed(page: Page, paper: string) {
  await page.getByLabel('What, on which paper').selectOption(paper);
  await expect(page.locator('[data-sheet]').first()).toBeVisible();
  return pagesOf(await page.pdf({ preferCSSPageSize: true }));
}

/** Sizes of type [pt], how far what is printed reaches, and what is cut, as laid out now. */
function looked(page: Page) {
  return page.evaluate(() => {
    const PT = 0.75;
    const sheets = [...document.querySelectorAll<HTMLElement>('[data-sheet]')];
    const worded = sheets.flatMap((sheet) =>
      [...sheet.querySelectorAll<HTMLElement>('*')].filter((element) =>
        [...element.childNodes].some(({ nodeType, nodeValue }) => nodeType === 3 && nodeValue?.trim() !== ''),
      ),
    );
    const sizeOf = (element: Element) => Number.parseFloat(getComputedStyle(element).fontSize) * PT;
    const jets = sheets.flatMap((sheet) => [...sheet.querySelectorAll('tbody td:nth-of-type(3)')]);
    const used = [...document.querySelectorAll('[data-page]')].map((page) => {
      const whole = page.getBoundingClientRect();
      const rects = [...page.querySelectorAll('[data-sheet] *')].map((each) => each.getBoundingClientRect());
      const [left, right] = [Math.min(...rects.map((r) => r.left)), Math.max(...rects.map((r) => r.right))];
      const [top, bottom] = [Math.min(...rects.map((r) => r.top)), Math.max(...rects.map((r) => r.bottom))];
      return Math.min((right - left) / whole.width, (bottom - top) / whole.height);
    });
    return {
      least: Math.min(...worded.map(sizeOf)),
      leastJets: Math.min(...jets.map(sizeOf)),
      used: Math.min(...used),
      cut: sheets.filter(
        (sheet) => sheet.scrollHeight > sheet.clientHeight + 1 || sheet.scrollWidth > sheet.clientWidth + 1,
      ).length,
    };
  });
}

test('what will be printed is seen whole on a phone, without going sideways', async ({ night }) => {
  await clubNightOf(night, 3);
  await night.goto('/club#print');
  const shown = night.getByRole('region', { name: 'As it will be printed' });
  await expect(shown).toBeVisible();
  const papers = await night.getByLabel('What, on which paper').locator('option').all();
  const values = await Promise.all(papers.map((paper) => paper.getAttribute('value')));
  for (const width of [280, 360, 1280]) {
    await night.setViewportSize({ width, height: 740 });
    for (const paper of values) {
      await night.getByLabel('What, on which paper').selectOption(paper);
      await expect
        .poll(() => shown.evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth), {
          message: `${paper} at ${width}`,
          intervals: [10, 20, 50, 100],
        })
        .toBeLessThanOrEqual(0);
      const boxes = await night.locator('[data-sheet], [data-page]').evaluateAll((sheets) =>
        sheets.map((sheet) => {
          const { right, width: wide } = sheet.getBoundingClientRect();
          return { right, wide };
        }),
      );
      expect(boxes.length).toBeGreaterThan(0);
      for (const { right, wide } of boxes) {
        expect(right).toBeLessThanOrEqual(width);
        // As large as there is room for.
        if (width < 700) expect(wide).toBeGreaterThan(0.4 * (width - 32));
      }
    }
  }
});

/** Paper, and how many pages three, five and nine racers take on it: 4 up as 4+3+2, so that nobody is left over. */
const SHEETS = [
  { paper: 'sheet-a4', size: [210, 297], of3: 3, of5: 5 },
  { paper: 'sheet-a4-2', size: [297, 210], of3: 2, of5: 3 },
  { paper: 'sheet-a4-4', size: [210, 297], of3: 1, of5: 2 },
  { paper: 'sheet-letter', size: [216, 279], of3: 3, of5: 5 },
  { paper: 'sheet-letter-2', size: [279, 216], of3: 2, of5: 3 },
  { paper: 'sheet-letter-4', size: [216, 279], of3: 1, of5: 2 },
  { paper: 'sheet-a5', size: [148, 210], of3: 3, of5: 5 },
  { paper: 'sheet-a6', size: [105, 148], of3: 3, of5: 5 },
] as const;

for (const racers of [3, 5] as const)
  test(`${racers} racers on every paper: whole, large and no page to spare`, async ({ night }) => {
    const names = await clubNightOf(night, racers);
    await night.goto('/club#print');
    // ISO 216 and ANSI/ASME Y14.1, landscape for the briefing.
    expect(await printed(night, 'briefing-a4')).toEqual({ count: 1, size: [297, 210] });
    expect(await printed(night, 'briefing-letter')).toEqual({ count: 1, size: [279, 216] });
    for (const { paper, size, of3, of5 } of SHEETS) {
      expect(await printed(night, paper), paper).toEqual({ count: racers === 3 ? of3 : of5, size });
      for (const name of names) await expect(night.locator(`[data-sheet="${name}"]`)).toHaveCount(1);
      const look = await looked(night);
      expect(look.cut, paper).toBe(0);
      expect(look.least, paper).toBeGreaterThanOrEqual(8.99);
      expect(look.leastJets, paper).toBeGreaterThanOrEqual(14);
      expect(look.used, paper).toBeGreaterThanOrEqual(0.9);
      expect(await couldBeLarger(night), paper).toBe(0);
    }
    await expect(night.getByText('Too long for this paper.')).toBeHidden();
    await expect(night.getByText('Too wide for this paper')).toBeHidden();
  });

/** Sheets whose type could be a tenth larger: neither too large for their place then, nor as large as type gets. */
function couldBeLarger(page: Page) {
  return page.evaluate(() => {
    const LARGEST = 2.4;
    return [...document.querySelectorAll<HTMLElement>('[data-sheet]')].filter((sheet) => {
      const scale = Number(sheet.style.getPropertyValue('--scale'));
      sheet.style.setProperty('--scale', String(scale * 1.1));
      const over = sheet.scrollHeight > sheet.clientHeight + 1 || sheet.scrollWidth > sheet.clientWidth + 1;
      sheet.style.setProperty('--scale', String(scale));
      return !over && scale * 1.1 < LARGEST;
    }).length;
  });
}

test('the briefing of six racers is one page, and none is left over for its last lines', async ({
  night,
}) => {
  await clubNightOf(night, 6);
  await night.goto('/club#print');
  expect(await printed(night, 'briefing-a4')).toEqual({ count: 1, size: [297, 210] });
  expect(await printed(night, 'briefing-letter')).toEqual({ count: 1, size: [279, 216] });
});

test('a sheet says who, in which class, how cold and where its page stands', async ({ night }) => {
  await clubNightOf(night, 3);
  await night.goto('/club#print');
  const briefing = night.locator('[data-sheet="The briefing"]');
  await expect(briefing.getByRole('rowheader', { name: 'Ilsa Vorn · Open' })).toBeVisible();
  await expect(briefing.getByRole('columnheader', { name: /^19:00\s*−?\d+.°F$/ })).toBeVisible();
  await night.getByLabel('What, on which paper').selectOption('sheet-a4-4');
  const sheet = night.locator('[data-sheet]').first();
  await expect(sheet.getByRole('heading')).toBeVisible();
  await expect(sheet).toContainText('Open');
  await expect(sheet.getByRole('columnheader', { name: '°F' })).toBeVisible();
  await expect(sheet.getByRole('row', { name: /Round 1 19:00 \d+ \d{3} \d{3} \d{3}/ })).toBeVisible();
});

test('a long sled leaves the name in one line', async ({ night }) => {
  await night.goto('/club');
  const hand = clubHand(night);
  await enterEvent(hand);
  await enterHours(hand);
  const rows = ['Knut Rask', 'Pia Tavel'].map(
    (name, i) =>
      `${name};${40 + i};Old blue twin of the brothers;Open Modified;400x2;390x2 400x2 410x2;18;1320 ft`,
  );
  await hand.fill('Table', ['Racer;Bib;Machine;Class;Mains;Box;Temp (F);Elevation', ...rows].join('\n'));
  await hand.press('Add 2 racers');
  await night.getByRole('region', { name: 'Racers by the hour' }).waitFor({ timeout: 45_000 });
  await night.goto('/club#print');
  for (const paper of ['sheet-a4-4', 'sheet-letter-2', 'sheet-a6'] as const) {
    await printed(night, paper);
    const sheet = night.locator('[data-sheet]').first();
    await expect(sheet).toContainText('Old blue twin of the brothers · Open Modified');
    const lines = await sheet.getByRole('heading').evaluate((heading) => {
      const { lineHeight } = getComputedStyle(heading);
      // As it is laid out, however small it is shown.
      return Math.round((heading as HTMLElement).offsetHeight / Number.parseFloat(lineHeight));
    });
    expect(lines, paper).toBe(1);
  }
});

test('a table that goes on over a page takes at least two racers with it', async ({ night }) => {
  // As many as make the matrix end one row after a page, were its rows on their own.
  await clubNightOf(night, 25);
  await night.goto('/club#print');
  const groups = night.locator('[data-sheet] tbody');
  await expect(groups.first()).toBeVisible();
  const rows = await groups.evaluateAll((bodies) =>
    bodies.map((body) => ({
      rows: body.querySelectorAll('tr').length,
      kept: getComputedStyle(body).breakInside,
    })),
  );
  expect(rows.length).toBeGreaterThan(10);
  for (const { rows: together } of rows) expect(together).toBeGreaterThanOrEqual(2);
  await night.emulateMedia({ media: 'print' });
  const kept = await groups.evaluateAll((bodies) => bodies.map((body) => getComputedStyle(body).breakInside));
  expect(new Set(kept)).toEqual(new Set(['avoid']));
  const least = await looked(night);
  expect(least.least).toBeGreaterThanOrEqual(8.99);
});

test('warns of a sheet that does not fit, and cuts nothing off', async ({ night }) => {
  const [first, second, third] = await clubNightOf(night, 3, { runs: '24', every: '20' });
  await night.goto('/club#print');
  const { count } = await printed(night, 'sheet-a6');
  await expect(night.getByText('Too long for this paper.')).toBeVisible();
  await expect(night.getByText(`${first}, ${second} and ${third}: nothing is cut`)).toBeVisible();
  // Two pages each, and no blank one after them.
  expect(count).toBe(6);
});

test('the night printed from a phone has its picture, also where nobody scrolled to it', async ({
  night,
}) => {
  const charts: string[] = [];
  night.on('requestfinished', (request) => {
    if (/\/chart-[^/]*\.js$/.test(request.url())) charts.push(request.url());
  });
  await night.goto('/');
  await expect(night.getByRole('region', { name: 'Next', exact: true })).toBeVisible();
  await expect(night.locator('.recharts-surface')).toHaveCount(0);
  // A thumb anywhere on the page, as it takes to come to the browser's menu; what comes before the page listens counts not.
  await expect(async () => {
    await night.getByRole('heading', { level: 1 }).click();
    await expect.poll(() => charts.length, { timeout: 2000 }).toBe(1);
  }).toPass();
  // Loaded and run.
  await night.evaluate((address) => import(address!), charts[0]);
  const drawn = await night.evaluate(() => {
    // A print waits for nothing that is not there when this is over.
    window.dispatchEvent(new Event('beforeprint'));
    return [...document.querySelectorAll('.recharts-surface')].map((surface) =>
      surface.getAttribute('width'),
    );
  });
  expect(drawn.length).toBeGreaterThanOrEqual(2);
  // As wide as paper, not as the phone.
  for (const width of drawn) expect(Number(width)).toBeGreaterThan(600);
});
