import { expect, type Page } from '@playwright/test';
import { instantOf } from './clock';
import { clubNightOf } from './club-hand';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago', now: '18:15' });

const SCREENS = [
  { width: 1280, height: 720 },
  { width: 1920, height: 1080 },
  { width: 3840, height: 2160 },
] as const;

/** The page of the wall as it stands: what is read, and what of it cannot be read whole. */
function onWall(page: Page) {
  return page.evaluate(() => {
    const tiles = [...document.querySelectorAll<HTMLElement>('main ol > li')];
    const jobs = [...document.querySelectorAll<HTMLElement>('section[aria-label="Next jobs"] ol > li')];
    const jets = tiles.map((tile) => tile.lastElementChild!);
    const main = document.querySelector('main')!.getBoundingClientRect();
    const cut = [...document.querySelectorAll<HTMLElement>('main *')].filter((element) => {
      const { right, bottom } = element.getBoundingClientRect();
      const wide = element.clientWidth > 1 && element.scrollWidth > element.clientWidth + 1;
      return wide || right > main.right + 1 || bottom > window.innerHeight + 1;
    });
    const words = [...document.querySelectorAll('main ol > li > span:first-child > span')];
    return {
      // What does not end above the foot lies under its words; a tile's own lower rule is the band's in the last row.
      over: tiles
        .filter(
          (tile) =>
            tile.getBoundingClientRect().bottom -
              Number.parseFloat(getComputedStyle(tile).borderBlockEndWidth) >
            tile.closest('section')!.parentElement!.getBoundingClientRect().bottom + 0.5,
        )
        .map((tile) => tile.textContent),
      names: jobs.map((job) => job.firstElementChild!.textContent.trim()),
      figure: Math.min(...jets.map((each) => Number.parseFloat(getComputedStyle(each).fontSize))),
      cut: cut.map((element) => element.textContent.slice(0, 60)),
      // A word that is broken stands on two lines.
      broken: words.filter((word) => word.getClientRects().length > 1).map((word) => word.textContent),
      text: Math.min(
        ...[...document.querySelectorAll('main p, main a, main button')]
          .filter((element) => element.textContent.trim() !== '')
          .map((element) => Number.parseFloat(getComputedStyle(element).fontSize)),
      ),
    };
  });
}

async function openWall(page: Page): Promise<number> {
  await page.goto('/club#wall');
  await expect(page.locator('main ol > li').first()).toBeVisible({ timeout: 45_000 });
  const number = page.getByText(/^Page \d+ of \d+$/);
  if ((await number.count()) === 0) return 1;
  return Number(/of (\d+)/.exec((await number.textContent()) ?? '')?.[1]);
}

for (const racers of [1, 6, 40])
  test(`${racers} on the wall: every job of the first moment is shown, nothing is cut`, async ({ night }) => {
    test.setTimeout(150_000);
    const names = await clubNightOf(night, racers);
    for (const size of SCREENS) {
      await night.setViewportSize(size);
      await night.goto('about:blank');
      const pages = await openWall(night);
      const seen = new Set<string>();
      for (let page = 1; page <= pages; page += 1) {
        const wall = await onWall(night);
        expect(wall.cut, `${size.height}, page ${page}`).toEqual([]);
        expect(wall.broken).toEqual([]);
        expect(wall.over, `${size.height}, page ${page}`).toEqual([]);
        expect(wall.figure).toBeGreaterThanOrEqual(size.height * 0.05 - 0.1);
        expect(wall.text).toBeGreaterThanOrEqual(15);
        for (const name of wall.names) seen.add(name);
        if (pages > 1) await night.getByRole('button', { name: 'Next page' }).click();
      }
      // Everybody of this roster has something to do before the first run.
      expect([...seen].sort()).toEqual([...names].sort());
    }
  });

test('a hundred racers are on the wall, and its pages turn by themselves unless they are held', async ({
  night,
}) => {
  test.setTimeout(180_000);
  await clubNightOf(night, 100);
  await night.setViewportSize(SCREENS[1]);
  await night.emulateMedia({ reducedMotion: 'reduce' });
  const pages = await openWall(night);
  expect(pages).toBeGreaterThan(3);
  await expect(night.getByText(`Page 1 of ${pages}`)).toBeVisible();
  // The page's own timers, of which none is left out.
  await night.clock.runFor(12_000);
  await expect(night.getByText(`Page 2 of ${pages}`)).toBeVisible({ timeout: 30_000 });
  await night.getByRole('button', { name: 'Hold this page' }).click();
  const held = await night.getByText(/^Page \d+ of/).textContent();
  await night.clock.runFor(30_000);
  await expect(night.getByText(held ?? '')).toBeVisible();
  expect(await night.evaluate(() => document.getAnimations().length)).toBe(0);
});

test('near a moment the wall looks it, and shows the jobs alone', async ({ night, context }) => {
  await clubNightOf(night, 6);
  await night.setViewportSize(SCREENS[0]);
  await openWall(night);
  const band = night.locator('[data-urgency]').first();
  await expect(band).toHaveAttribute('data-urgency', 'later');
  await expect(night.getByRole('region', { name: 'In the engines now' })).toBeVisible();
  const ground = () => band.evaluate((element) => getComputedStyle(element).backgroundColor);
  const plain = await ground();
  await context.clock.setFixedTime(instantOf('18:32'));
  await night.clock.runFor(5000);
  await expect(band).toHaveAttribute('data-urgency', 'soon', { timeout: 20_000 });
  await expect(night.getByRole('region', { name: 'In the engines now' })).toHaveCount(0);
  await context.clock.setFixedTime(instantOf('18:41'));
  await night.clock.runFor(5000);
  await expect(band).toHaveAttribute('data-urgency', 'now', { timeout: 20_000 });
  expect(await ground()).not.toBe(plain);
});

test('the air line says temperature, density altitude and what an hour changed', async ({
  night,
  context,
}) => {
  await clubNightOf(night, 1);
  await context.clock.setFixedTime(instantOf('20:30'));
  await night.setViewportSize(SCREENS[0]);
  await openWall(night);
  const line = night.getByTestId('air-line');
  await expect(line).toHaveText(/°F.*DA .*ft.*°F colder, DA [\d,]+.ft lower than an hour ago/);
  await expect(night.getByText(/^Weather: typed/)).toBeVisible();
});
