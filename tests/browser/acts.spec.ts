import { expect, type Page } from '@playwright/test';
import { instantOf } from './clock';
import { countingHand } from './counting-hand';
import { enterOwnNight } from './enter-own-night';
import { test } from './watched-page';

// The rounds of the evening are still to come.
test.use({ now: '18:15' });

const form = (page: Page) => page.locator('dialog[open]');

test('a reading takes four taps and fields at most', async ({ night }) => {
  await night.goto('/');
  const hand = countingHand();
  await hand.tap(night.getByRole('link', { name: 'Take a reading' }).first());
  await hand.fill(form(night).getByRole('textbox', { name: 'Temperature' }), '9');
  await hand.tap(form(night).getByRole('button', { name: 'Use this reading' }));
  await expect(night.getByRole('region', { name: 'What the reading moved' })).toContainText('9');
  expect(hand.acts()).toBeLessThanOrEqual(4);
});

test('from a first visit to a plan of one’s own takes twenty taps and fields at most', async ({ night }) => {
  await night.goto('/');
  const hand = countingHand();
  await enterOwnNight(hand, night, '380 390 400 410 420 430');
  await expect(night.getByRole('region', { name: 'The call' })).toContainText(/(Start on|Put in|No swap)/);
  expect(hand.acts()).toBeLessThanOrEqual(20);
});

const region = (page: Page, name: string) => page.getByRole('region', { name, exact: true });
const round = (page: Page, name: string) => page.getByRole('row', { name: new RegExp(`^${name} `) });

test('a delay of everything by fifty minutes takes two taps, and one to take it back', async ({ night }) => {
  await night.goto('/');
  const hand = countingHand();
  await hand.tap(night.getByRole('button', { name: 'Running late?' }));
  await hand.tap(form(night).getByRole('button', { name: 'All 50 min later: Round 1 at 19:50' }));
  await expect(round(night, 'Round 1')).toContainText('19:50 to 20:05');
  await expect(round(night, 'Round 8')).toContainText('01:05');
  expect(hand.acts()).toBe(2);
  await hand.tap(night.getByRole('button', { name: 'Undo' }));
  await expect(round(night, 'Round 1')).toContainText('19:00 to 19:15');
  expect(hand.acts()).toBe(3);
});

test('a run that starts now and one more run take two taps each', async ({ night }) => {
  await night.goto('/');
  const hand = countingHand();
  await hand.tap(night.getByRole('button', { name: 'Running late?' }));
  await hand.tap(form(night).getByRole('button', { name: 'Round 1 starts now' }));
  await expect(round(night, 'Round 2')).toContainText('19:00 to 19:15');
  expect(hand.acts()).toBe(2);
  await hand.tap(night.getByRole('button', { name: 'Running late?' }));
  await hand.tap(form(night).getByRole('button', { name: 'One more run after Round 8' }));
  await expect(round(night, 'Round 9')).toBeVisible();
  expect(hand.acts()).toBe(4);
});

test('knocked out takes one tap, and one to be back', async ({ night }) => {
  await night.goto('/');
  const hand = countingHand();
  await hand.tap(night.getByRole('button', { name: 'Knocked out' }));
  await expect(region(night, 'Next')).toContainText('Not in Rounds 1 to 8.');
  expect(hand.acts()).toBe(1);
  await night.reload();
  await hand.tap(night.getByRole('button', { name: 'Back in' }));
  await expect(region(night, 'Next')).toContainText('Put in 420 410 420');
  expect(hand.acts()).toBe(2);
});

test.describe('near the window of a swap', () => {
  test.use({ now: '19:40' });

  test('that it is in takes one tap', async ({ night }) => {
    await night.goto('/');
    const hand = countingHand();
    await hand.tap(night.getByRole('button', { name: 'Done: 420 410 420 is in' }));
    await expect(region(night, 'In now')).toContainText('420 410 420');
    expect(hand.acts()).toBe(1);
  });

  test('a page that is left straight after the press shows it whole or not at all', async ({ night }) => {
    await night.goto('/');
    const done = night.getByRole('button', { name: 'Done: 420 410 420 is in' });
    for (const ms of [0, 3, 10, 30]) {
      await expect(done).toBeVisible();
      const [again] = await Promise.all([
        night.waitForEvent('load'),
        done.evaluate((button: HTMLElement, wait) => {
          button.click();
          setTimeout(() => location.reload(), wait);
        }, ms),
      ]);
      await expect(region(again, 'The call')).toBeVisible();
      const isIn = /420\s410\s420/.test((await region(again, 'In now').textContent()) ?? '');
      await expect(done).toHaveCount(isIn ? 0 : 1);
      if (isIn) return;
    }
  });
});

test('the answer about a missed swap takes one tap', async ({ night }) => {
  await night.goto('/');
  await night.getByRole('button', { name: 'This is my plan' }).click();
  await expect(night.getByText('This is your plan now.')).toBeVisible();
  await night.clock.setFixedTime(instantOf('21:51'));
  await night.reload();
  const hand = countingHand();
  await hand.tap(region(night, 'Not told').getByRole('button', { name: /^Yes, before Round/ }));
  await expect(region(night, 'Not told')).toHaveCount(0);
  await expect(region(night, 'In now')).toContainText('420 410 420');
  expect(hand.acts()).toBe(1);
});

test.describe('after four rounds', () => {
  test.use({ now: '21:40' });

  test('a verdict takes two taps from the page of the night', async ({ night }) => {
    await night.goto('/');
    const hand = countingHand();
    await hand.tap(night.getByRole('link', { name: 'Log a run' }));
    await hand.tap(night.getByRole('button', { name: 'Round 4: Good' }));
    await expect(night.getByRole('row', { name: /^Round 4/ })).toContainText('good');
    expect(hand.acts()).toBe(2);
  });
});
