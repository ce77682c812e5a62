import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { clubHand, clubNightOf, enterEvent, enterHours, type Hand, rosterOf } from './club-hand';
import { test } from './watched-page';

test.use({ timezoneId: 'America/Chicago', now: '18:15' });

const matrixOf = (page: Page) => page.getByRole('region', { name: 'Racers by the hour' });
const rosterSection = (page: Page) => page.getByRole('region', { name: 'Roster' });

async function emptyNight(page: Page): Promise<Hand> {
  await page.goto('/club');
  const hand = clubHand(page);
  await enterEvent(hand);
  await enterHours(hand);
  return hand;
}

test('six racers have a briefing from nothing in 20 acts or fewer', async ({ night }) => {
  const hand = await emptyNight(night);
  const { names, table } = rosterOf(6);
  await hand.fill('Table', table);
  await hand.press('Add 6 racers');
  for (const name of names)
    await expect(matrixOf(night).getByRole('rowheader', { name })).toBeVisible({ timeout: 45_000 });
  expect(hand.acts()).toBeLessThanOrEqual(20);
});

test('forty racers come from a file in 30 acts or fewer, go out and come in unchanged', async ({ night }) => {
  test.setTimeout(180_000);
  const hand = await emptyNight(night);
  const { table } = rosterOf(40);
  const [heads, ...rows] = table.split('\n');
  const numbered = [`Bib;${heads}`, ...rows.map((row, i) => `${i + 1};${row}`)].join('\n');
  const form = night.locator('dialog[open]');
  await form.getByLabel('Or the file of a roster').setInputFiles({
    name: 'club.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(numbered),
  });
  await hand.press('Add 40 racers');
  await expect(matrixOf(night).getByRole('rowheader')).toHaveCount(40, { timeout: 90_000 });
  // Choosing the file is one more.
  expect(hand.acts() + 1).toBeLessThanOrEqual(30);
  await expect(matrixOf(night).getByRole('rowheader', { name: '#1 Ilsa Vorn', exact: true })).toBeVisible();
  const labels = await matrixOf(night).getByRole('rowheader').allTextContents();
  expect(new Set(labels).size).toBe(40);
  const first = await savedRoster(night);
  // A night of its own takes the file in; what goes out of it is the same file.
  const again = await emptyNightAfter(night);
  await form.getByLabel('Or the file of a roster').setInputFiles({
    name: 'roster.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(first),
  });
  await again.press('Add 40 racers');
  await expect(matrixOf(night).getByRole('rowheader')).toHaveCount(40, { timeout: 90_000 });
  expect(await savedRoster(night)).toBe(first);
});

test('the hours asked for after a new night are never those of the night before', async ({ night }) => {
  await clubNightOf(night, 12);
  // What stands in the fields of any form of hours, whenever something of it changes.
  await night.evaluate(() => {
    const typed: string[] = [];
    Object.assign(window, { typed });
    new MutationObserver(() => {
      const form = [...document.querySelectorAll('dialog[open]')].find(
        (each) => each.querySelector('h2')?.textContent === 'Hours',
      );
      for (const field of form?.querySelectorAll<HTMLInputElement>('input[aria-describedby*="-kind"]') ?? [])
        if (field.value !== '') typed.push(field.value);
    }).observe(document.body, { childList: true, subtree: true, attributes: true });
  });
  const hand = await emptyEventAfter(night);
  await expect(night.locator('dialog[open]').getByRole('button', { name: 'Save hours' })).toBeVisible();
  expect(await night.evaluate(() => (window as unknown as { typed: string[] }).typed)).toEqual([]);
  await enterHours(hand);
  // The way goes on to the racers of the new one, who are none yet.
  await expect(night.locator('dialog[open]').getByRole('textbox', { name: 'Table' })).toBeVisible();
  await expect(night.getByText('Nobody is on the roster yet.')).toBeVisible();
});

async function emptyNightAfter(page: Page): Promise<Hand> {
  const hand = await emptyEventAfter(page);
  await enterHours(hand);
  return hand;
}

async function emptyEventAfter(page: Page): Promise<Hand> {
  const hand = clubHand(page);
  await hand.follow('Start a club night');
  await hand.fill('Name of the event', 'Sunday on the lake');
  await hand.fill(/^Elevation/, '1300 ft');
  await hand.fill('First at', '19:00');
  await hand.fill('Every', '60');
  await hand.fill('How many', '5');
  await hand.fill('Each lasting', '10');
  await hand.press('Save event');
  return hand;
}

async function savedRoster(page: Page): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the roster (.csv)' }).click();
  return readFileSync(await (await download).path(), 'utf8');
}

test('a racer gets a bib, a box is shared, and the last roster is taken along with both', async ({
  night,
}) => {
  const names = await clubNightOf(night, 3);
  await rosterSection(night)
    .getByRole('link', { name: `Bib, name: ${names[0]}` })
    .click();
  const form = night.locator('dialog[open]');
  await form.getByRole('textbox', { name: 'Bib' }).fill('14');
  await form.getByRole('textbox', { name: 'Bib' }).press('Backspace');
  await form.getByRole('textbox', { name: 'Bib' }).press('7');
  await form.getByRole('button', { name: 'Save racer' }).click();
  await expect(
    matrixOf(night).getByRole('rowheader', { name: `#17 ${names[0]}`, exact: true }),
  ).toBeVisible();
  await rosterSection(night).getByRole('link', { name: 'Share a box' }).click();
  await form.getByRole('textbox', { name: 'Name of the box' }).fill('Trailer A');
  await form.getByRole('checkbox', { name: `#17 ${names[0]}` }).check();
  await form.getByRole('checkbox', { name: names[2] ?? '' }).check();
  // The first who shares it brought it along.
  await expect(form.getByRole('textbox', { name: 'Jets in it' })).toHaveValue(/^390x3 400x3/);
  await form.getByRole('button', { name: 'Save box' }).click();
  await expect(rosterSection(night)).toContainText('Box Trailer A');
  // Who shares a box is one choice of what is shown.
  await night.getByLabel('Show', { exact: true }).selectOption('Box Trailer A: 2 racers');
  await expect(matrixOf(night).getByRole('rowheader')).toHaveCount(2);
  await emptyNightAfter(night);
  await form.getByRole('radio', { name: 'Last event' }).check();
  await expect(form).toContainText(`3 racers: #17 ${names[0]}`);
  await form.getByRole('button', { name: 'Take them along' }).click();
  await expect(
    matrixOf(night).getByRole('rowheader', { name: `#17 ${names[0]}`, exact: true }),
  ).toBeVisible();
  await expect(rosterSection(night)).toContainText('Box Trailer A');
});

test('all of one moment are in at once, and taken back at once', async ({ night }) => {
  await clubNightOf(night, 6);
  const acts = night.getByRole('region', { name: 'What to do, by the clock' });
  await expect(acts.getByRole('listitem').first()).toBeVisible();
  const before = await acts.getByRole('listitem').allTextContents();
  const all = acts.getByRole('button', { name: /^All of \d\d:\d\d are in: \d racers$/ }).first();
  const told = Number(/(\d) racers$/.exec((await all.textContent()) ?? '')?.[1]);
  expect(told).toBeGreaterThan(1);
  await all.click();
  await expect(acts.getByRole('listitem')).toHaveCount(before.length - told);
  await night.getByRole('button', { name: 'Undo' }).click();
  await expect(acts.getByRole('listitem')).toHaveText(before);
  // For a class alone: only its own are told.
  await night.getByLabel('Show', { exact: true }).selectOption('Class Open: 2 racers');
  const ofClass = acts.getByRole('button', { name: /^All of .* are in: 2 racers$/ }).first();
  await ofClass.click();
  await night.getByLabel('Show', { exact: true }).selectOption('All 6 racers');
  await expect(acts.getByRole('listitem')).toHaveCount(before.length - 2);
});
