import { expect, type Locator, type Page } from '@playwright/test';
import { instantOf } from './clock';
import { countingHand } from './counting-hand';
import { enterOwnNight } from './enter-own-night';
import { test } from './watched-page';

// The rounds of the evening are still to come.
test.use({ now: '18:15' });

const region = (page: Page, name: string) => page.getByRole('region', { name, exact: true });
const main = (page: Page) => page.locator('main');

/** Runs of the table that stand so. */
const rounds = (within: Locator, state: string) =>
  within.getByRole('row', { name: /^Round \d/ }).filter({ hasText: state });

/** At a later time of the same night, as whoever takes the phone out again finds the page. */
async function at(night: Page, clock: string): Promise<void> {
  await night.clock.setFixedTime(instantOf(clock));
  await night.reload();
}

test('a swap that was accepted and not made is asked about, and nothing is said as if it were in', async ({
  night,
}) => {
  await night.goto('/');
  await night.getByRole('button', { name: 'This is my plan' }).click();
  await expect(night.getByText('This is your plan now.')).toBeVisible();
  await at(night, '21:51');
  const asked = region(night, 'Not told');
  for (const view of ['/', '/#track']) {
    await night.goto(view);
    await expect(asked).toContainText('Is 420 410 420 in?');
    await expect(asked).toContainText(/410\s400\s410 counts as in: lean \d+\sin\s64, Round\s\d/);
    await expect(region(night, 'In now')).toContainText(
      /410 400 410.*(LEAN|GOOD).*leaner than your baseline/,
    );
    await expect(region(night, 'Next')).toContainText(/Put in 4\d0\s4\d0\s4\d0/);
    await expect(main(night)).not.toContainText(/Stay on 4[2-9]|\bholds all/);
  }
  await night.goto('/');
  const table = night.getByRole('table', { name: /^Jets for every run/ });
  await expect(rounds(table, 'past, jets not told')).toHaveCount(4);
  await asked.getByRole('button', { name: 'No, still 410 400 410' }).click();
  await expect(asked).toHaveCount(0);
  await night.reload();
  await expect(region(night, 'In now')).toContainText('410 400 410');
  await expect(region(night, 'Next')).toContainText(/Put in 4\d0\s4\d0\s4\d0/);
  await expect(asked).toHaveCount(0);
  await expect(rounds(table, 'past, jets not told')).toHaveCount(4);
});

test('with no jet rich enough it says not to race, what to borrow, and nowhere that anything holds', async ({
  night,
}) => {
  await night.goto('/');
  await enterOwnNight(countingHand(), night, '390 400');
  const loud = night.getByRole('alert').filter({ hasText: 'Do not race' });
  for (const view of ['/', '/#track']) {
    await night.goto(view);
    await expect(loud).toContainText(
      /Do not race on 400.*Rounds\s1 to 3: lean up to \d+\sin\s64\. Borrow\s4\d0\./,
    );
    await expect(region(night, 'Next')).toContainText('Do not race on 400');
    await expect(main(night)).not.toContainText(/\bholds\b|No swap:|Stay on/);
  }
  await night.goto('/');
  await expect(night.getByRole('row', { name: /^Round 3/ })).toContainText('lean');
});

test.describe('within the window of a swap', () => {
  test.use({ now: '19:50' });

  test('a double tap says that one jet is in, and not the one that comes after it', async ({ night }) => {
    await night.goto('/');
    const done = night.getByRole('button', { name: 'Done: 420 410 420 is in' });
    await done.dblclick();
    const fitted = region(night, 'In now');
    await expect(fitted).toContainText('420 410 420');
    await expect(done).toHaveCount(0);
    await night.reload();
    await expect(fitted).toContainText('420 410 420');
    await expect(night.getByRole('button', { name: /^Done: / })).toHaveCount(0);
  });
});

test.describe('at three in the morning', () => {
  test.use({ now: '03:00' });

  test('the demo stands on a night with runs to come', async ({ night }) => {
    await night.goto('/');
    await expect(region(night, 'In now')).toContainText(/(LEAN|GOOD|RICH).*than your baseline/);
    await expect(region(night, 'Next')).toContainText(/Put in 4\d0\s4\d0\s4\d0/);
    await expect(main(night)).not.toContainText('No run to come');
    await expect(rounds(main(night), 'planned')).toHaveCount(8);
  });
});
