import { expect } from '@playwright/test';
import { PAGES } from '@/components/shell/pages';
import { instantOf } from './clock';
import { clubNightOf } from './club-hand';
import { NIGHT_STATES } from './night-states';
import { openState } from './open-state';
import { pagesOf } from './pdf-pages';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago' });
test.setTimeout(180_000);

/** From a phone on the paper of one half of the world, from a desk on that of the other. */
const PAPERS = [
  { width: 360, height: 740, format: 'A4' },
  { width: 1280, height: 800, format: 'Letter' },
] as const;
/** Sixty runs go on over a second sheet. */
const LONG = ['sixty'];

for (const state of NIGHT_STATES.filter(({ name }) => !LONG.includes(name)))
  test(`the night is one sheet of paper, with its picture: "${state.name}"`, async ({ night }) => {
    await openState(night, state);
    for (const { width, height, format } of PAPERS) {
      await night.setViewportSize({ width, height });
      const isPlanned = (await night.getByRole('heading', { name: 'The night in one picture' }).count()) > 0;
      if (isPlanned) {
        await night.getByRole('heading', { name: 'The night in one picture' }).scrollIntoViewIfNeeded();
        await expect(night.locator('.recharts-surface').first()).toBeVisible();
      }
      const { count } = pagesOf(await night.pdf({ format, preferCSSPageSize: true }));
      expect(count, format).toBe(1);
    }
  });

test('nothing that is asked or pressed on a screen is on paper', async ({ night }) => {
  await night.clock.setFixedTime(instantOf('19:40'));
  await night.goto('/');
  await expect(night.getByRole('region', { name: 'Next', exact: true })).toBeVisible();
  const asked = () =>
    night.evaluate(() =>
      [...document.querySelectorAll('button, input, select, textarea, summary')]
        .filter((element) => element.checkVisibility() && element.closest('[open]') === null)
        .map(({ outerHTML }) => outerHTML.slice(0, 100)),
    );
  for (const { href } of PAGES) {
    await night.emulateMedia({ media: 'screen' });
    await night.goto(href);
    await expect(night.getByRole('heading', { level: 1 })).toBeVisible();
    await night.waitForLoadState('networkidle');
    await night.emulateMedia({ media: 'print' });
    expect(await asked(), href).toEqual([]);
  }
  await night.emulateMedia({ media: 'screen' });
  await clubNightOf(night, 3);
  await night.emulateMedia({ media: 'print' });
  expect(await asked(), 'a club').toEqual([]);
  await expect(night.getByRole('heading', { name: 'What to do, by the clock' })).toBeVisible();
  await expect(night.getByRole('heading', { name: 'Roster' })).toBeHidden();
});
