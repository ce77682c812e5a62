import { expect, type Page } from '@playwright/test';
import { ASLEEP_ID } from '@/components/shell/asleep-script';
import { AWAKE } from '@/lib/planner/early-start';
import { expectNothingMoved, keepMoves } from './moves';
import { NIGHT_STATES } from './night-states';
import { test } from './watched-page';

test.use({ earlyAnswer: true });

/** What stands in the first screen, and where each piece of it: from inside the page, so that it is one moment. */
function firstScreen(page: Page) {
  return page.evaluate(() => {
    const plate = document.querySelector('[aria-label="In now"]')?.parentElement;
    if (plate === null || plate === undefined) return null;
    return {
      // How a style is spaced says nothing.
      html: plate.outerHTML.replace(
        /style="([^"]*)"/g,
        (_, style: string) => `style="${style.replace(/[ ;]/g, '')}"`,
      ),
      places: [...plate.querySelectorAll('*')].map((element) => {
        const { x, y, width, height } = element.getBoundingClientRect();
        return { x, y, width, height };
      }),
    };
  });
}

/** Keeps every answer to an address back until it is told to let them through. */
async function hold(page: Page, address: string): Promise<() => void> {
  let letThrough = (): void => undefined;
  const held = new Promise<void>((resolve) => {
    letThrough = resolve;
  });
  await page.route(address, async (route) => {
    await held;
    await route.continue();
  });
  return letThrough;
}

const holdScripts = (page: Page) => hold(page, '**/_next/static/chunks/*.js');

for (const clock of ['18:15', '21:40'])
  test.describe(`at ${clock}`, () => {
    test.use({ now: clock });

    test('the first screen of a first visit stands before the page is awake, and stays as it is when it wakes up', async ({
      night,
    }) => {
      await keepMoves(night);
      const letThrough = await holdScripts(night);
      await night.goto('/', { waitUntil: 'commit' });
      await expect(night.getByRole('region', { name: 'Next' })).toBeVisible();
      await expect(night.locator('html')).not.toHaveAttribute(AWAKE);
      await expect(night.getByRole('button', { name: 'Other jets' })).toBeDisabled();
      await night.evaluate(() => document.fonts.ready);
      const early = await firstScreen(night);
      expect(early?.html).toContain('invented');

      letThrough();
      await expect(night.getByRole('button', { name: 'Other jets' })).toBeEnabled();
      await expect(night.locator('[aria-busy]')).toHaveCount(0);
      expect(await firstScreen(night)).toEqual(early);
      await expectNothingMoved(night);
    });
  });

test('a face that comes after the answer moves no word of it', async ({ night }) => {
  await keepMoves(night);
  const letFaceThrough = await hold(night, '**/*.woff2');
  const letScriptsThrough = await holdScripts(night);
  // What the worker says is heard before the face comes.
  await night.addInitScript(() => {
    addEventListener('DOMContentLoaded', () => {
      globalThis.heavyAirStart?.worker?.addEventListener('message', ({ data }) => {
        if ('drawn' in data) Object.assign(window, { drawn: true });
      });
    });
  });
  await night.goto('/', { waitUntil: 'commit' });
  await night.waitForFunction(() => 'drawn' in window);
  await expect(night.getByText('Opening the night…')).toBeVisible();
  letFaceThrough();
  await expect(night.getByRole('region', { name: 'Next' })).toBeVisible();
  await night.evaluate(() => document.fonts.ready);
  await expectNothingMoved(night);
  letScriptsThrough();
  await expect(night.getByRole('button', { name: 'Other jets' })).toBeEnabled();
  await expectNothingMoved(night);
});

/** What the page keeps of the night it shows, for the next visit; it does so once it is at rest. */
const KEPT = 'heavy-air-night';
const kept = (page: Page) => page.evaluate((key) => localStorage.getItem(key), KEPT);

/** Not opened at all: what is said then is no plan. */
const UNPLANNED = ['no-hours', 'no-box'];

/** At the track nothing is answered early. */
const WHOLE = NIGHT_STATES.filter((state) => !state.name.startsWith('track'));

for (const { name, path, clock, steps = [] } of WHOLE) {
  test.describe(`a night in the state "${name}"`, () => {
    test.use({ now: clock });

    test('stands before the page is awake on the next visit, and stays as it is when it wakes up', async ({
      night,
    }) => {
      await night.goto(path);
      await expect(night.getByRole('button', { name: 'Other jets' })).toBeEnabled();
      for (const step of steps) await step(night);
      if (UNPLANNED.includes(name)) {
        await expect(night.getByText('No plan')).toBeVisible();
        return;
      }
      // Some states are put into the database by hand, past the store that would drop what was kept before.
      await night.evaluate((key) => localStorage.removeItem(key), KEPT);
      await night.reload();
      await expect.poll(() => kept(night)).not.toBeNull();
      const letThrough = await holdScripts(night);
      await night.reload({ waitUntil: 'commit' });
      await expect(night.getByRole('region', { name: 'In now' })).toBeVisible();
      await expect(night.locator('html')).not.toHaveAttribute(AWAKE);
      await expect(night.locator('fieldset:disabled')).toBeVisible();
      await night.evaluate(() => document.fonts.ready);
      const early = await firstScreen(night);

      letThrough();
      await expect(night.locator('[aria-busy]')).toHaveCount(0);
      await expect(night.locator('fieldset:disabled')).toHaveCount(0);
      expect(await firstScreen(night)).toEqual(early);
    });
  });
}

test('a night that was changed since it was shown is not answered with what it was', async ({ night }) => {
  await night.goto('/');
  await expect(night.getByRole('button', { name: 'Other jets' })).toBeEnabled();
  await expect.poll(() => kept(night)).not.toBeNull();
  // Another page of the same browser, where a record is written.
  await night.goto('/machines?edit=demo-machine');
  await night.getByLabel('Name', { exact: true }).first().fill('Renamed in the trailer');
  await night.getByRole('button', { name: 'Save' }).first().click();
  await expect.poll(() => kept(night)).toBeNull();
  const letThrough = await holdScripts(night);
  await night.goto('/', { waitUntil: 'commit' });
  await expect(night.getByText('Opening the night…')).toBeVisible();
  await night.waitForFunction(() => globalThis.heavyAirStart !== undefined);
  letThrough();
  await expect(night.getByText('Renamed in the trailer').first()).toBeVisible();
});

test('a copy of a night that the browser has since thrown away is not shown, nor the invented one', async ({
  night,
}) => {
  await night.goto('/');
  await expect(night.getByRole('button', { name: 'Other jets' })).toBeEnabled();
  await expect.poll(() => kept(night)).not.toBeNull();
  const copy = await kept(night);
  // No page of ours, which would make the database anew.
  await night.route('**/empty', (route) => route.fulfill({ contentType: 'text/html', body: '<title>' }));
  await night.goto('/empty');
  await night.evaluate(
    (text) =>
      new Promise<void>((resolve, reject) => {
        localStorage.setItem('heavy-air-night', text ?? '');
        const gone = indexedDB.deleteDatabase('heavy-air');
        gone.onsuccess = () => resolve();
        gone.onerror = () => reject(gone.error);
      }),
    copy,
  );
  const letThrough = await holdScripts(night);
  await night.goto('/', { waitUntil: 'commit' });
  await night.waitForFunction(() => globalThis.heavyAirStart !== undefined);
  await expect(night.getByText('Opening the night…')).toBeVisible();
  letThrough();
  await expect(night.getByRole('button', { name: 'Other jets' })).toBeEnabled();
});

test('what is pressed before the page is awake is done when it wakes up', async ({ night }) => {
  const letThrough = await holdScripts(night);
  await night.goto('/', { waitUntil: 'commit' });
  await night.getByRole('button', { name: 'Display' }).click();
  await expect(night.locator('html')).not.toHaveAttribute(AWAKE);
  letThrough();
  await expect(night.getByRole('dialog', { name: 'Display' })).toBeVisible();
});

test('words that the page has not started move nothing of an answer that stands there', async ({ night }) => {
  await keepMoves(night);
  await holdScripts(night);
  await night.goto('/', { waitUntil: 'commit' });
  await expect(night.getByRole('region', { name: 'Next' })).toBeVisible();
  // As the page's own timer does.
  await night.evaluate((id) => document.getElementById(id)?.removeAttribute('hidden'), ASLEEP_ID);
  await expect(night.getByText('This page has not started.')).toBeInViewport({ ratio: 1 });
  await expectNothingMoved(night);
});

test('a link into the page is not answered with the first screen', async ({ night }) => {
  const letThrough = await holdScripts(night);
  await night.goto('/#track', { waitUntil: 'commit' });
  await expect(night.getByText('Opening the night…')).toBeVisible();
  letThrough();
  await expect(night.locator('[data-view=track]')).toBeVisible();
  expect(await night.evaluate(() => globalThis.heavyAirStart?.answer)).toBeNull();
});
