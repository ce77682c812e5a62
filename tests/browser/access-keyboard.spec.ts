import { expect, type Page } from '@playwright/test';
import { pressAt, soundStop, tabTo, typeInto } from './keyboard';
import { faultsInEveryLook, test } from './watched-page';

// Half an hour before a swap.
test.use({ timezoneId: 'America/Chicago', now: '19:40' });

const region = (page: Page, name: string) => page.getByRole('region', { name, exact: true });
const dialog = (page: Page) => page.locator('dialog[open]');

/** The page has been drawn, as far as these words, and the focus stands before all of it. */
async function open(page: Page, path: string, words: string | RegExp): Promise<void> {
  await page.goto(path);
  await expect(page.locator('main').getByText(words).first()).toBeVisible();
}

/** An act is shown before it is kept, and can be taken back once it is. */
async function undo(page: Page, done: string): Promise<void> {
  await expect(region(page, 'Just done')).toContainText(done);
  await page.keyboard.press('ControlOrMeta+Z');
}

test('a night goes by keyboard alone, and the focus is always somewhere and seen', async ({ night }) => {
  await open(night, '/', 'Night drags on Lake Orvana');
  const fitted = region(night, 'In now');

  // What is fitted: a dialog that gives the focus back.
  await pressAt(night, 'Other jets');
  await expect(dialog(night)).toBeVisible();
  await tabTo(night, /^Main jet, carburettor 2/);
  await night.keyboard.press('ArrowUp');
  await pressAt(night, 'Done: it is in');
  await expect(fitted).toContainText('410 390 410');
  await expect(dialog(night)).toHaveCount(0);
  expect(await soundStop(night)).toBe('Other jets');
  await undo(night, '410 390 410 is in.');
  await expect(fitted).toContainText('410 400 410');

  // The next act: its button keeps its place for a moment once it is done, then goes; the focus stays there.
  await pressAt(night, 'Done: 420 410 420 is in');
  await expect(fitted).toContainText('420 410 420');
  await expect(night.getByRole('button', { name: 'Done: 420 410 420 is in' })).toHaveCount(0);
  expect(await soundStop(night)).toBe('Next');
  await undo(night, '420 410 420 is in.');
  await expect(fitted).toContainText('410 400 410');

  // The picture is one stop, once it is drawn too, and its hours are walked.
  await region(night, 'The night in one picture').scrollIntoViewIfNeeded();
  await expect(night.locator('.recharts-surface').first()).toBeVisible();
  const passed = await tabTo(night, 'Walk the hours');
  expect(passed.at(-2)).toBe('I ride trails');
  const said = () => night.getByRole('slider', { name: 'Walk the hours' }).getAttribute('aria-valuetext');
  await night.keyboard.press('Home');
  expect(await said()).toMatch(/^18:00: 18.°F, ideal \d+ \(\d+ to \d+\)\./);
  await night.keyboard.press('ArrowRight');
  expect(await said()).toMatch(/^19:00: 15.°F/);
  await night.keyboard.press('ArrowLeft');
  await night.keyboard.press('End');
  expect(await said()).toMatch(/Baseline 410 400 410: −\d\.\d.%, lean\./);
  expect((await tabTo(night, /^1 and 3/)).length).toBe(1);

  // All that is left can be reached; after the last stop the page lets go.
  const rest = await tabTo(night, 'Numbers');
  expect(rest).toEqual(expect.arrayContaining(['This is my plan', 'Open a link or a file']));
  await night.keyboard.press('Tab');
  expect(await night.evaluate(() => document.activeElement?.closest('main') ?? null)).toBeNull();
});

test('theme, reading and track view go by keyboard alone', async ({ night }) => {
  await open(night, '/', 'Night drags on Lake Orvana');
  await pressAt(night, 'Display');
  await tabTo(night, /^(As the device|Day|Night)$/);
  await night.keyboard.press('ArrowRight');
  await night.keyboard.press('ArrowRight');
  await expect(night.locator('html')).toHaveAttribute('data-theme', 'night');
  await night.keyboard.press('Escape');
  expect(await soundStop(night)).toBe('Display');

  const track = night.locator('main[data-view="track"]');
  await pressAt(night, 'At the track');
  // Both views have a way to a reading; only a machine is fast enough to take the one that is about to go.
  await expect(track).toBeVisible();
  await pressAt(night, 'Take a reading');
  await expect(dialog(night).getByRole('button', { name: 'Use this reading' })).toBeVisible();
  await typeInto(night, { Temperature: '9' });
  await night.keyboard.press('Enter');
  await expect(dialog(night)).toHaveCount(0);
  await soundStop(night);
  await expect(night.getByRole('region', { name: 'What the reading moved' })).toContainText('9');
  await pressAt(night, 'Whole night');
  await expect(track).toBeHidden();
  await pressAt(night, 'Change the reading at 19:40');
  await expect(dialog(night)).toBeVisible();
  await night.keyboard.press('Escape');
  expect(await soundStop(night)).toBe('Change the reading at 19:40');
  await pressAt(night, 'Remove the reading at 19:40');
  await expect(region(night, 'Readings')).toContainText('None yet.');
  expect(await soundStop(night)).toBe('Readings');
});

test('a machine is added, deleted and had back by keyboard alone', async ({ night }) => {
  await open(night, '/machines', 'Add a machine');
  await pressAt(night, 'Add a machine');
  await typeInto(night, {
    Name: 'Blue 600',
    'Main jet': '410',
    'Jets in the box': '400x3 410x3 420',
    Temperature: '14',
    Elevation: '1150',
  });
  await night.keyboard.press('Enter');
  await expect(night.getByRole('heading', { name: 'Blue 600' })).toBeVisible();
  await soundStop(night);
  await pressAt(night, 'Delete Blue 600');
  await expect(night.getByRole('heading', { name: 'Blue 600' })).toHaveCount(0);
  await soundStop(night);
  await night.keyboard.press('ControlOrMeta+Z');
  await expect(night.getByRole('heading', { name: 'Blue 600' })).toBeVisible();
});

test('a club night goes by keyboard alone, and each of its views can be used by all', async ({ night }) => {
  await open(night, '/club', 'Start a club night');
  await pressAt(night, 'Start a club night');
  await expect(dialog(night).getByRole('button', { name: 'Save event' })).toBeVisible();
  await typeInto(night, {
    'Name of the event': 'Saturday on the lake',
    Elevation: '1300 ft',
    'First at': '19:00',
    Every: '60',
    'How many': '3',
    'Each lasting': '10',
  });
  await night.keyboard.press('Enter');
  await expect(dialog(night).getByRole('heading', { name: 'Hours', exact: true })).toBeVisible();
  await expect(dialog(night).getByRole('button', { name: 'Save hours' })).toBeVisible();
  await typeInto(night, { '18:00': '18', '22:00': '-6' });
  await pressAt(night, 'Save hours');
  await expect(dialog(night).getByRole('textbox', { name: 'Table' })).toBeVisible();
  await typeInto(night, {
    Table: 'Racer;Mains;Box;Temp (F);Elevation\nOda Rask;400x3;390x3 400x3 410x3;22;900 ft',
  });
  await pressAt(night, 'Add 1 racer');
  const matrix = region(night, 'Racers by the hour');
  await expect(matrix.getByRole('rowheader', { name: 'Oda Rask' })).toBeVisible();
  await soundStop(night);
  for (const view of ['', 'racers', 'class-new', 'wall', 'print']) {
    await night.goto(`/club#${view}`);
    await expect(night.getByRole('heading').first()).toBeVisible();
    expect(await faultsInEveryLook(night), view).toEqual([]);
  }
});

test('the screw and its days go by keyboard alone', async ({ night }) => {
  await open(night, '/trail', /^Change the days/);
  await pressAt(night, /^Change the days/);
  await tabTo(night, /^Temperature/);
  await night.keyboard.press('ControlOrMeta+A');
  await night.keyboard.insertText('-5F');
  await expect(night.getByRole('columnheader', { name: /Spring.*−5/ })).toBeVisible();
  await pressAt(night, 'Remove Midwinter');
  await expect(night.getByRole('columnheader', { name: /Midwinter/ })).toHaveCount(0);
  await soundStop(night);
});
