import { expect, type Page } from '@playwright/test';
import { countingHand } from './counting-hand';
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
  await expect(night.getByRole('status', { name: 'What the reading moved' })).toContainText('9');
  expect(hand.acts()).toBeLessThanOrEqual(4);
});

test('from a first visit to a plan of one’s own takes twenty taps and fields at most', async ({ night }) => {
  await night.goto('/');
  const hand = countingHand();
  const text = (name: string | RegExp) => form(night).getByRole('textbox', { name, exact: true }).first();
  await hand.tap(night.getByRole('link', { name: 'Start my own night' }).first());
  for (const [name, typed] of Object.entries({
    Name: 'Blue twin',
    'Main jet': '400',
    'Jets in the box': '380 390 400 410 420 430',
    Temperature: '20',
    Elevation: '1300',
  }))
    await hand.fill(text(name), typed);
  await hand.tap(form(night).getByRole('button', { name: 'Save machine' }));
  for (const [name, typed] of Object.entries({
    'Name of the event': 'Saturday heats',
    Elevation: '1300',
    'First at': '20:00',
    Every: '60',
    'How many': '3',
    'Each lasting': '10',
  }))
    await hand.fill(text(name), typed);
  await hand.tap(form(night).getByRole('button', { name: 'Save event' }));
  await hand.fill(text(/19:00/), '18');
  await hand.fill(text(/23:00/), '2');
  await hand.tap(form(night).getByRole('button', { name: 'Save hours' }));
  await expect(night.getByRole('region', { name: 'The call' })).toContainText(/(Start on|Fit|No swap)/);
  expect(hand.acts()).toBeLessThanOrEqual(20);
});
