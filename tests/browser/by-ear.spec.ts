import { expect, type Locator, type Page } from '@playwright/test';
import { PAGES } from '@/components/shell/pages';
import type { BoardAnswer } from '@/lib/contract/board-answer';
import { isoUtc } from '@/lib/time/zone';
import { instantOf } from './clock';
import { clubNightOf } from './club-hand';
import { heard, idle, listen } from './hearing';
import { pressAt, soundStop, tabTo, typeInto } from './keyboard';
import { NIGHT_STATES } from './night-states';
import { placesRead, readingFaults } from './read-tree';
import { test } from './watched-page';

// A run is over, and the swap is some minutes away.
test.use({ timezoneId: 'America/Chicago', now: '19:40' });

const region = (page: Page, name: string) => page.getByRole('region', { name, exact: true });
const dialog = (page: Page) => page.locator('dialog[open]');
const inNow = (page: Page) => region(page, 'In now');

/** Opens the night and hears it: nothing speaks of itself because a page was opened. */
async function open(page: Page, path = '/'): Promise<void> {
  await page.goto(path);
  await expect(inNow(page)).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Before you touch it' })).toBeAttached();
}

type Shown = { readonly at: Locator; readonly words: string };

/** An act is heard as one sentence, the one that says what changed, by the time the page shows it. */
async function says(page: Page, sentence: string | RegExp, act: Promise<unknown>, shown: Shown) {
  await act;
  await expect(shown.at).toContainText(shown.words);
  await expect.poll(() => page.evaluate(() => window.heard.length)).toBeGreaterThan(0);
  expect(await heard(page)).toEqual([
    typeof sentence === 'string' ? sentence : expect.stringMatching(sentence),
  ]);
}

/** A dialog takes the focus, has nothing that is not told, and gives the focus back to what opened it. */
async function looksInto(page: Page, opener: string, look: () => Promise<unknown> = () => Promise.resolve()) {
  await pressAt(page, opener);
  await expect(dialog(page).getByRole('button').nth(1)).toBeVisible();
  expect(await page.evaluate(() => document.activeElement?.closest('dialog[open]') ?? null)).not.toBeNull();
  expect(await readingFaults(dialog(page)), opener).toEqual([]);
  await look();
  if ((await dialog(page).count()) > 0) await page.keyboard.press('Escape');
  await expect(dialog(page)).toHaveCount(0);
  expect(await soundStop(page)).toBe(opener);
}

test('an evening goes by ear: the answer first, one sentence for every act, nothing without a name', async ({
  night,
}) => {
  await listen(night);
  await open(night);
  expect(await readingFaults(night)).toEqual([]);
  expect((await placesRead(night.locator('main'))).slice(0, 3)).toEqual([
    'Night drags on Lake Orvana',
    'In now',
    'Next',
  ]);
  expect(await heard(night)).toEqual([]);

  // A swap, and back.
  const fitted = (words: string): Shown => ({ at: inNow(night), words });
  await says(night, '420 410 420 is in.', pressAt(night, 'Done: 420 410 420 is in'), fitted('420 410 420'));
  const undo = () => night.keyboard.press('ControlOrMeta+Z');
  await says(night, 'Taken back: 420 410 420 is in.', undo(), fitted('410 400 410'));
  await looksInto(night, 'Other jets', async () => {
    await tabTo(night, /^Main jet, carburettor 2/);
    await night.keyboard.press('ArrowDown');
    await says(night, '410 is in.', pressAt(night, 'Done: it is in'), fitted('410 410 410'));
  });
  await says(night, 'Taken back: 410 is in.', undo(), fitted('410 400 410'));

  // A delay, and back.
  const second = night.getByRole('row', { name: /^Round 2 / });
  await looksInto(night, 'Running late?', () =>
    says(
      night,
      'Round 2 and what follows moved by 20 minutes.',
      pressAt(night, 'All 20 min later: Round 2 at 20:05'),
      { at: second, words: '20:05 to 20:20' },
    ),
  );
  await says(night, /^Taken back: Round 2 and/, undo(), { at: second, words: '19:45 to 20:00' });

  // Two readings, of which each is spoken with what it moves.
  for (const [temperature, time] of [
    ['9', '19:40'],
    ['10', '19:30'],
  ] as const) {
    await pressAt(night, 'Take a reading');
    await expect(dialog(night).getByRole('button', { name: 'Use this reading' })).toBeVisible();
    expect(await readingFaults(dialog(night))).toEqual([]);
    await typeInto(night, { Temperature: temperature, Time: time });
    await says(
      night,
      new RegExp(
        `^Read: ${temperature} °F at ${time}, . °F colder than the hours say\\. (The |No job moves)`,
      ),
      night.keyboard.press('Enter'),
      { at: region(night, 'What the reading moved'), words: `Read: ${temperature} °F` },
    );
    await soundStop(night);
  }
  expect(await readingFaults(night)).toEqual([]);

  // At the track and back: nothing is spoken a second time.
  await pressAt(night, 'At the track');
  await expect(night.locator('main[data-view="track"]')).toBeVisible();
  expect(await readingFaults(night)).toEqual([]);
  await pressAt(night, 'Whole night');
  await expect(region(night, 'Readings')).toBeVisible();
  await pressAt(night, 'Numbers');
  await expect(region(night, 'Set-up')).toBeVisible();
  await expect(night.getByRole('table', { name: /^Air hour by hour/ })).toBeVisible();
  expect(await readingFaults(night)).toEqual([]);
  for (const form of ['Change: Event', 'Change: Hours', 'Change: Machine']) await looksInto(night, form);
  expect(await heard(night)).toEqual([]);
});

test('a swap that was missed is asked about first, and the answer is heard once', async ({ night }) => {
  await listen(night);
  await open(night);
  await pressAt(night, 'This is my plan');
  await expect(night.getByText('This is your plan now.')).toBeVisible();
  await night.clock.setFixedTime(instantOf('21:51'));
  await open(night);
  // That nothing is to be raced on is not asked for.
  expect(await heard(night)).toEqual([expect.stringMatching(/^Stop Do not race Round 5 on 410 400 410: /)]);
  expect((await placesRead(night.locator('main'))).slice(0, 3)).toEqual([
    'Night drags on Lake Orvana',
    'Not told',
    'Is 420 410 420 in?',
  ]);
  expect(await readingFaults(night)).toEqual([]);
  await says(night, '420 410 420 is in.', pressAt(night, /^Yes, before Round/), {
    at: inNow(night),
    words: '420 410 420',
  });
});

/** What half an hour tells of itself; a swap that becomes too late is news, a clock that goes on is none. */
const UNTOUCHED: readonly (readonly [state: string, from: string, heard: readonly RegExp[]])[] = [
  ['ahead', '19:40', []],
  ['stop', '19:40', []],
  ['missed', '21:51', []],
  ['track', '20:05', [/^Stop Do not race Round 3 on 410 400 410: /]],
  [
    'lean',
    '23:50',
    [/^Next Stop Do not race on 390 380 390 /, /^Not made in time: the swap to 420 410 420 at 23:45\.$/],
  ],
];

for (const [name, from, sentences] of UNTOUCHED)
  test(`half an hour in which nobody touches the night of "${name}" says what changes, once`, async ({
    night,
  }) => {
    const { clock, path, steps = [] } = NIGHT_STATES.find((state) => state.name === name)!;
    await listen(night);
    await night.clock.setFixedTime(instantOf(clock));
    await open(night);
    if (path !== '/') await night.goto(path);
    for (const step of steps) await step(night);
    if (path === '/')
      await expect(night.getByRole('heading', { name: 'Before you touch it' })).toBeAttached();
    await settled(night);
    await idle(night, from, 30);
    await expect.poll(() => night.evaluate(() => window.heard.length)).toBe(sentences.length);
    expect(await heard(night)).toEqual(sentences.map((sentence) => expect.stringMatching(sentence)));
  });

/** All that opening the page and what was done on it had to say is said. */
async function settled(page: Page): Promise<void> {
  await page.evaluate(() => new Promise((rest) => setTimeout(rest, 500)));
  await heard(page);
}

test('half an hour at the club’s night says once who is not to race, and all of it can be told apart by ear', async ({
  night,
}) => {
  await listen(night);
  await clubNightOf(night, 2);
  expect(await readingFaults(night)).toEqual([]);
  await settled(night);
  await idle(night, '19:40', 30);
  expect(await heard(night)).toEqual([
    expect.stringMatching(/^Ilsa Vorn: Do not race Round 2 on 410 400 410: /),
  ]);
});

test('what stands on any other page can be told apart by ear', async ({ night }) => {
  // Four rounds are over, so that there are some to log.
  await night.clock.setFixedTime(instantOf('21:40'));
  await open(night);
  for (const path of [...PAGES.map(({ href }) => href).filter((href) => href !== '/'), '/after', '/aside']) {
    await night.goto(path);
    await expect(night.getByRole('heading', { level: 1 })).toBeVisible();
    await night.waitForLoadState('networkidle');
    for (const summary of await night.locator('main summary').filter({ visible: true }).all())
      await summary.click();
    expect.soft(await readingFaults(night), path).toEqual([]);
  }
});

const at = (clock: string): string => isoUtc(instantOf(clock));

/** A board as its server answers: a swap in twenty minutes. */
function boardAnswer(lead: string): BoardAnswer {
  const setting = { mains: [420, 410, 420], trim: null };
  return {
    id: 'board1',
    revision: 1,
    event: { name: 'Saturday on the lake', timezone: 'America/Chicago' },
    postedAt: at('19:00'),
    plannedAt: at('19:40'),
    expiresAt: at('23:00'),
    hours: { age: 'fresh', madeAt: at('19:00'), attribution: 'Invented hours' },
    air: { temperatureC: -11, pressureHpa: 968, relativeHumidity: 0.8 },
    machines: [
      {
        id: 'blue',
        name: 'Blue 600',
        problem: null,
        inNow: '410 400 410',
        known: true,
        state: 'right',
        driftPercent: 0,
        lateByMinutes: 0,
        question: null,
        dangers: [],
        risk: 'Risk of lean: 3 in 64, Round 8.',
        job: {
          kind: 'swap',
          lead,
          window: '20:00 to 20:15',
          lines: ['After Round 2. Start by 20:15.'],
          windowStart: at('20:00'),
          latestStart: at('20:15'),
          done: { label: 'Done: 420 410 420 is in', setting },
        },
        runs: [
          { name: 'Round 3', start: at('20:30'), state: 'planned', setting: '420 410 420', grade: 'good' },
        ],
      },
    ],
    pushKey: null,
    keeper: null,
  };
}

test('a board says when its job changes, and counts the minutes in silence', async ({ night }) => {
  let lead = 'Put in 420 410 420';
  await night.route('**/api/boards/board1', (route) => route.fulfill({ json: boardAnswer(lead) }));
  await listen(night);
  await night.goto('/board#board1.secret.blue');
  const next = region(night, 'Next');
  await expect(next).toContainText('in 20 min');
  expect(await readingFaults(night)).toEqual([]);
  await settled(night);
  await idle(night, '19:40', 10);
  await expect(next).toContainText('in 10 min');
  expect(await heard(night)).toEqual([]);
  await night.route('**/api/boards/board1/done', (route) => {
    lead = 'Put in 430 420 430';
    return route.fulfill({ status: 204 });
  });
  await pressAt(night, 'Done: 420 410 420 is in');
  await expect(next).toContainText(lead);
  await expect.poll(() => night.evaluate(() => window.heard.length)).toBeGreaterThan(0);
  expect(await heard(night)).toEqual(['Put in 430 420 430']);
});
