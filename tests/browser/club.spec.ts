import { expect, type Page } from '@playwright/test';
import { machineSchema } from '@/lib/contract/machine';
import { linkAddress } from '@/lib/share/addresses';
import { packNight } from '@/lib/share/night-link';
import { sharedNightSchema } from '@/lib/share/shared-night';
import { isoUtc } from '@/lib/time/zone';
import { instantOf } from './clock';
import { clubHand, enterEvent, enterHours, type Hand } from './club-hand';
import { ON_DESK, test } from './watched-page';

test.use({ timezoneId: 'America/Chicago', now: '18:15' });

const TABLE = [
  'Racer;Class;Mains;Box;Temp (F);Elevation',
  'Ilsa Vorn;Open;410/400/410;390x3 400x3 410x3 420x3 430x3 440x3;13;1320 ft',
  'Juri Tavel;Stock;162.5x2;160x2 162.5x2 165x2 167.5x2 170x2 172.5x2;18;',
  'Oda Rask;;400x3;390x3 400x3 410x3;22;900 ft',
];

async function threeRacers(page: Page, event: Parameters<typeof enterEvent>[1] = {}): Promise<Hand> {
  await page.goto('/club');
  const hand = clubHand(page);
  await enterEvent(hand, event);
  await enterHours(hand);
  await hand.fill('Table', TABLE.join('\n'));
  await hand.press('Add 3 racers');
  await expect(page.getByRole('region', { name: 'Racers by the hour' })).toBeVisible();
  return hand;
}

test('a tech makes a briefing for three racers from nothing in under 25 acts', ON_DESK, async ({ night }) => {
  const hand = await threeRacers(night);
  expect(hand.acts()).toBeLessThan(25);
  const matrix = night.getByRole('region', { name: 'Racers by the hour' });
  for (const name of ['Ilsa Vorn', 'Juri Tavel', 'Oda Rask'])
    await expect(matrix.getByRole('rowheader', { name })).toBeVisible();
  const acts = night.getByRole('region', { name: 'What to do, by the clock' });
  await expect(acts.getByRole('listitem').first()).toContainText(/\d\d:\d\d.*→/);
  await expect(acts).toContainText('Engine off');
  await expect(night.getByRole('region', { name: 'Borrowing' })).toContainText(
    /Oda Rask.*No jet that will do for Rounds? \d.*: needs 4\d0\..*Ilsa Vorn can spare/s,
  );
  // It outlives the page.
  await night.reload();
  await expect(matrix.getByRole('rowheader', { name: 'Juri Tavel' })).toBeVisible();
});

test('three of one stock class are three racers, and the same table again is asked about', async ({
  night,
}) => {
  await night.goto('/club');
  const hand = clubHand(night);
  await enterEvent(hand);
  await enterHours(hand);
  const stock = Array(3).fill('Twin 440; 440; 430x2 440x2 450x2; 13 F; 1320 ft').join('\n');
  await hand.fill('Table', stock);
  await hand.press('Add 3 racers');
  await expect(night.getByText('3 racers added.')).toBeVisible();
  const matrix = night.getByRole('region', { name: 'Racers by the hour' });
  for (const name of ['Twin 440', 'Twin 440 (2)', 'Twin 440 (3)'])
    await expect(matrix.getByRole('rowheader', { name, exact: true })).toBeVisible();
  await night.getByRole('link', { name: 'Add racers' }).click();
  const form = night.locator('dialog[open]');
  await form.getByRole('textbox', { name: 'Table' }).fill(stock);
  await expect(form.getByRole('group', { name: /Are these 3 here already/ })).toBeVisible();
  await expect(form.getByRole('button', { name: 'Add', exact: true })).toBeDisabled();
  await form.getByRole('radio', { name: 'Add as others' }).check();
  await form.getByRole('button', { name: 'Add 3 racers' }).click();
  await expect(matrix.getByRole('rowheader', { name: 'Twin 440 (6)', exact: true })).toBeVisible();
});

test('one racer can be shown alone', async ({ night }) => {
  await threeRacers(night);
  await night.getByLabel('Show', { exact: true }).selectOption('Oda Rask');
  const matrix = night.getByRole('region', { name: 'Racers by the hour' });
  await expect(matrix.getByRole('rowheader')).toHaveText(['Oda Rask']);
  await expect(night.getByRole('region', { name: 'What to do, by the clock' })).not.toContainText('Juri');
});

test('a jet that is in is told, and can be taken back', async ({ night }) => {
  await threeRacers(night);
  const acts = night.getByRole('region', { name: 'What to do, by the clock' });
  await expect(acts.getByRole('listitem').first()).toBeVisible();
  const before = await acts.getByRole('listitem').allTextContents();
  await acts
    .getByRole('button', { name: /^Done: it is in, / })
    .first()
    .click();
  await expect(acts.getByRole('listitem')).toHaveCount(before.length - 1);
  await night.getByRole('button', { name: 'Undo' }).click();
  await expect(acts.getByRole('listitem')).toHaveText(before);
});

test('what the sheets no longer say is told with its reason when the hours turn', async ({ night }) => {
  await threeRacers(night);
  await night.getByRole('button', { name: 'Lock this plan' }).click();
  await expect(night.getByText(/^The club goes by this briefing/)).toBeVisible();
  await expect(night.getByText(/^Changed since the briefing went out/)).toBeHidden();
  await night.goto('/club#hours');
  const form = night.locator('dialog[open]');
  await form.getByRole('textbox', { name: /23:00/ }).first().fill('-24');
  await form.getByRole('button', { name: 'Save hours' }).click();
  await expect(night.getByText(/^Changed since the briefing went out: .*Ilsa Vorn/)).toBeVisible();
  await expect(night.getByText(/it is now .* colder/).first()).toBeVisible();
});

test('a class gets times of its own, and its racers follow', async ({ night }) => {
  await threeRacers(night);
  await night.getByRole('link', { name: 'Change class Open' }).click();
  const form = night.locator('dialog[open]');
  await form.getByRole('radio', { name: 'First, every, how many' }).check();
  await form.getByLabel('First at').fill('20:30');
  await form.getByLabel('Every', { exact: true }).fill('45');
  await form.getByLabel('How many', { exact: true }).fill('3');
  await form.getByLabel('Each lasting').fill('8');
  await form.getByRole('button', { name: 'Save class' }).click();
  const roster = night.getByRole('region', { name: 'Roster' });
  await expect(roster).toContainText('3 runs from 20:30');
  await expect(roster).toContainText('5 runs from 19:00');
});

const machine = machineSchema.parse({
  name: 'Pike 700',
  carburettors: [{ main: 420 }],
  box: [410, 420, 430, 440].map((size) => ({ size, count: 1 })),
  baseline: { air: { temperatureC: -12, elevationM: 396 } },
});

const tonight = (clock: string) => isoUtc(instantOf(clock));

const SHARED = sharedNightSchema.parse({
  event: {
    name: 'Late heats',
    timezone: 'America/Chicago',
    elevationM: 396,
    runs: [
      { name: 'Late 1', start: tonight('21:20'), end: tonight('21:30') },
      { name: 'Late 2', start: tonight('22:20'), end: tonight('22:30') },
    ],
  },
  machines: [{ machine }],
  hours: [],
  sharedAt: tonight('12:00'),
});

test('links that racers sent are looked at first and then join the roster with their own times', async ({
  night,
  baseURL,
}) => {
  await threeRacers(night);
  await night.getByRole('link', { name: 'Add racers' }).click();
  const form = night.locator('dialog[open]');
  await form.getByRole('radio', { name: 'Links and files' }).check();
  const link = linkAddress(baseURL ?? '', packNight(SHARED));
  await form.getByRole('textbox', { name: 'Links' }).fill(`here you go ${link} see you ${link.slice(0, -9)}`);
  await expect(form).toContainText('Link 1: Pike 700 (420), 2 runs of Late heats.');
  await expect(form).toContainText(/Link 2: This link is damaged/);
  await form.getByRole('button', { name: 'Add 1 racer' }).click();
  const roster = night.getByRole('region', { name: 'Roster' });
  await expect(roster).toContainText('baseline 420, 2 runs from 21:20');
  await expect(
    night.getByRole('region', { name: 'Racers by the hour' }).getByRole('rowheader', { name: 'Pike 700' }),
  ).toBeVisible();
  await night.getByRole('button', { name: 'Undo' }).click();
  await expect(roster).not.toContainText('Pike 700');
});

test('the wall follows the clock, and what is told at the desk', ON_DESK, async ({ night, context }) => {
  await threeRacers(night);
  const wall = await context.newPage();
  await wall.goto('/club#wall');
  await expect(wall.getByText('18:15', { exact: true })).toBeVisible();
  const acts = wall.getByRole('region', { name: 'Next jobs' }).getByRole('listitem');
  await expect(acts.first()).toBeVisible();
  const count = await acts.count();
  await night
    .getByRole('button', { name: /^Done: it is in, / })
    .first()
    .click();
  await expect(acts).toHaveCount(count - 1);
  await wall.clock.setFixedTime(instantOf('18:40'));
  await wall.clock.runFor(5000);
  await expect(wall.getByText('18:40', { exact: true })).toBeVisible({ timeout: 15_000 });
});
