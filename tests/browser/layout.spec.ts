import { expect, type Page } from '@playwright/test';
import { instantOf } from './clock';
import { NIGHT_STATES } from './night-states';
import { openNumbers } from './numbers';
import { openState } from './open-state';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago', now: '18:15' });

test('the trail page answers on its first screen, on a phone and on a desk', async ({ night }) => {
  for (const size of [
    { width: 360, height: 740 },
    { width: 1280, height: 800 },
  ]) {
    await night.setViewportSize(size);
    await night.goto('/trail');
    const seasons = night.getByRole('region', { name: 'Seasons side by side' });
    for (const name of ['Fuel screw', 'Pilot', 'Clip groove', 'Main'])
      await expect(seasons.getByRole('row', { name: new RegExp(`^${name} `) })).toBeInViewport({ ratio: 1 });
    if (size.width > 1000) {
      await expect(night.getByTestId('ride-call')).toBeInViewport({ ratio: 1 });
      const right = await night
        .getByRole('region', { name: 'A ride: one setting for all of it' })
        .boundingBox();
      // The right half of the page is used.
      expect(right!.x).toBeGreaterThan(600);
      expect(right!.x + right!.width).toBeGreaterThan(1150);
    }
  }
});

test('a table that is wider than the screen says so, on the side that goes on', async ({ night }) => {
  await night.setViewportSize({ width: 320, height: 740 });
  await night.goto('/trail');
  const card = night.getByRole('region', { name: 'The jet card' });
  const region = card.getByRole('region', { name: 'Main jets by temperature and elevation.' });
  await expect(region).toBeVisible();
  const after = card.getByText('more →');
  const before = card.getByText('← more');
  await expect(after).toBeVisible();
  await expect(before).toBeHidden();
  await region.evaluate((element) => {
    element.scrollLeft = element.scrollWidth;
  });
  await expect(before).toBeVisible();
  await expect(after).toBeHidden();
  await night.setViewportSize({ width: 1280, height: 800 });
  await expect(after).toHaveCount(0);
});

test('what a dialog asks stands together, also where the screen is taller', async ({ night }) => {
  await night.setViewportSize({ width: 360, height: 900 });
  await night.goto('/machines');
  await night.getByRole('button', { name: 'Display' }).click();
  const gaps = await night.locator('dialog[open]').evaluate((dialog) => {
    const fields = [...dialog.querySelectorAll('fieldset, label, p')]
      .map((field) => field.getBoundingClientRect())
      .filter(({ height }) => height > 1)
      .sort((a, b) => a.top - b.top);
    return fields
      .slice(1)
      .map(({ top }, i) => top - Math.max(...fields.slice(0, i + 1).map((f) => f.bottom)));
  });
  expect(gaps.length).toBeGreaterThan(3);
  // A control with its margin stands between two labels; 70 to 130 px of nothing is a hole.
  expect(Math.max(...gaps)).toBeLessThan(70);
});

test('lean, good and rich stand in one row, in this order, on every phone', async ({ night }) => {
  await night.clock.setFixedTime(instantOf('21:40'));
  for (const width of [280, 360]) {
    await night.setViewportSize({ width, height: 740 });
    await night.goto('/log');
    const boxes = await Promise.all(
      ['Lean', 'Good', 'Rich'].map((verdict) =>
        night.getByRole('button', { name: new RegExp(`: ${verdict}$`) }).boundingBox(),
      ),
    );
    const [lean, good, rich] = boxes.map((box) => box!);
    expect([good!.y, rich!.y], `${width} px`).toEqual([lean!.y, lean!.y]);
    expect(good!.x).toBeGreaterThan(lean!.x);
    expect(rich!.x).toBeGreaterThan(good!.x);
  }
});

/** By how much the folds in sight are apart from what stands under them with a rule of its own. */
const foldGaps = (page: Page) =>
  page
    .locator(':is(main, dialog[open]) details + :is(details, section)')
    .evaluateAll((unders) =>
      unders.map(
        (under) =>
          under.getBoundingClientRect().top -
          (under.previousElementSibling?.getBoundingClientRect().bottom ?? 0),
      ),
    );

test('folds under each other share one rule, wherever a part has more than one', async ({ night }) => {
  const expectShared = async (least: number) => {
    const gaps = await foldGaps(night);
    expect(gaps.length).toBeGreaterThanOrEqual(least);
    for (const gap of gaps) expect(Math.abs(gap)).toBeLessThan(1);
  };
  await night.goto('/trail');
  await expect(night.getByRole('button', { name: 'Print the card' })).toBeVisible();
  await expectShared(1);
  await night.goto('/');
  await night.getByRole('button', { name: 'Share this night' }).click();
  await expect(night.locator('summary', { hasText: 'Code to scan' })).toBeVisible();
  // Three folds, and the board under them.
  await expectShared(3);
  await night.goto('/#machine');
  await expect(night.getByRole('dialog').getByText('Limits')).toBeVisible();
  await expectShared(4);
});

test('the act of the jets dialog is as wide as the dialog, and 72 px high', async ({ night }) => {
  await night.setViewportSize({ width: 360, height: 740 });
  await night.goto('/');
  await night.getByRole('button', { name: 'Other jets' }).click();
  const act = await night.getByRole('button', { name: 'Done: it is in', exact: true }).boundingBox();
  expect(act!.height).toBeGreaterThanOrEqual(72);
  expect(act!.width).toBeGreaterThanOrEqual(320);
});

test('the figures of every run stand on a phone whole, three jets in one of the columns', async ({
  night,
}) => {
  await night.setViewportSize({ width: 360, height: 740 });
  await night.goto('/');
  await openNumbers(night);
  const runs = night.getByRole('region', { name: 'Runs', exact: true });
  await expect(runs.getByRole('row', { name: /^Round 8 / })).toBeAttached();
  const table = runs.getByRole('table');
  const [inside, around] = await table.evaluate((element) => [
    element.scrollWidth,
    element.parentElement?.clientWidth ?? 0,
  ]);
  expect(inside).toBeLessThanOrEqual(around!);
  await expect(runs.getByText('more →')).toHaveCount(0);
});

test('what stands below the picture is as wide as the page on a desk', async ({ night }) => {
  for (const width of [1280, 1920]) {
    await night.setViewportSize({ width, height: 800 });
    await night.goto('/');
    await openNumbers(night);
    await expect(night.getByRole('region', { name: 'The box tonight' })).toBeVisible();
    const { x, width: wide } = (await night.getByRole('main').boundingBox())!;
    // The last of each row of parts.
    for (const name of ['Share', 'What a swap is worth', 'The box tonight', 'Hours', 'Before you touch it']) {
      const part = (await night.getByRole('region', { name, exact: true }).boundingBox())!;
      expect(x + wide - (part.x + part.width), `${name} at ${width}`).toBeLessThan(40);
    }
  }
});

for (const state of ['ahead', 'missed', 'lean', 'steep', 'one', 'halves'])
  test(`the jets that would have stayed in have their name at their line on a phone: "${state}"`, async ({
    night,
  }) => {
    await openState(night, NIGHT_STATES.find(({ name }) => name === state)!);
    for (const width of [360, 412]) {
      await night.setViewportSize({ width, height: 740 });
      const seen = await night
        .getByRole('region', { name: 'The night', exact: true })
        .locator('td > div[aria-hidden] > span')
        .evaluateAll((names) =>
          names.map((name) => {
            const [own, room] = [name.getBoundingClientRect(), name.parentElement!.getBoundingClientRect()];
            return own.top < room.top + 2 && own.left >= room.left && own.right <= room.right;
          }),
        );
      expect(seen.length, `${width}`).toBeGreaterThan(0);
      expect(seen, `${width}`).not.toContain(false);
    }
  });

test('a short dialog shows its act whole on a phone that lies', async ({ night }) => {
  await night.setViewportSize({ width: 740, height: 360 });
  await night.goto('/');
  await night.getByRole('button', { name: 'Other jets' }).click();
  await expect(night.getByRole('button', { name: 'Done: it is in', exact: true })).toBeInViewport({
    ratio: 1,
  });
});

test('a form that begins with a part draws no second rule under the head of its dialog', async ({
  night,
}) => {
  await night.goto('/#hours');
  const head = night.getByRole('dialog').getByRole('heading', { name: 'Temperatures' }).locator('..');
  await expect(head).toHaveCSS('border-block-start-width', '0px');
});

test('the word behind an hour’s number stands beside or under the number, never under the clock', async ({
  night,
}) => {
  for (const width of [280, 360]) {
    await night.setViewportSize({ width, height: 740 });
    await night.goto('/#hours');
    const hour = night.getByRole('textbox', { name: '18:00' });
    const [number, word] = [await hour.boundingBox(), await hour.locator('+ span').boundingBox()];
    expect(word!.x, `${width} px`).toBeGreaterThanOrEqual(number!.x);
  }
});

test('what is pressed beside a heading is written as large as any other button', async ({ night }) => {
  await night.goto('/');
  await expect(night.getByRole('button', { name: 'Other jets' })).toBeEnabled();
  await night.goto('/machines');
  await night.getByRole('button', { name: /^Baselines, parts, learning/ }).click();
  const size = (name: string) =>
    night.getByRole('button', { name, exact: true }).evaluate((button) => getComputedStyle(button).fontSize);
  expect(await size('Add a baseline')).toBe(await size('Back to the machines'));
});

test('no word in a drawing is smaller than any other on a screen', async ({ night }) => {
  await night.goto('/');
  await expect(night.getByRole('button', { name: 'Other jets' })).toBeEnabled();
  for (const width of [280, 360, 1280]) {
    await night.setViewportSize({ width, height: 740 });
    for (const path of ['/trail', '/machines']) {
      await night.goto(path);
      if (path === '/machines')
        await night.getByRole('button', { name: /^Baselines, parts, learning/ }).click();
      const words = night.locator('main svg text');
      await expect(words.first()).toBeAttached();
      // Measured as it is drawn: a drawing that is shrunk shrinks its words.
      const sizes = () =>
        words.evaluateAll((texts) =>
          texts.map(
            (text) =>
              Number.parseFloat(getComputedStyle(text).fontSize) *
              ((text as SVGTextElement).getScreenCTM()?.a ?? 0),
          ),
        );
      await expect
        .poll(async () => Math.min(...(await sizes())), { message: `${path}, ${width} px` })
        .toBeGreaterThan(14.9);
    }
  }
});
