// What `npm run pictures` takes: every page, and every state of the night. A scene a line: its name, where, at what time,
// what is done before it is taken, and what it is about where that is not the top of the page.
import { register } from 'tsx/esm/api';

register();
const { clubHand, clubNightOf, enterEvent, enterHours } = await import('../tests/browser/club-hand.ts');
const { NIGHT_STATES } = await import('../tests/browser/night-states.ts');
const { partlyToldNightFile } = await import('../tests/support/past-night.ts');

/** A clock of the demo night, in its own zone, in January. */
export const at = (clock) => `2027-01-${clock < '12:00' ? '17' : '16'}T${clock}:00-06:00`;

const press = (name) => (page) => page.getByRole('button', { name }).first().click();
const go = (address) => (page) => page.evaluate((to) => window.location.assign(to), address);
const later = (clock) => async (page) => {
  await page.clock.setFixedTime(at(clock));
  await page.reload();
};
/** A club in which one racer has no jet rich enough for the end of the night. */
async function clubWithStop(page) {
  await page.goto('/club');
  const hand = clubHand(page);
  await enterEvent(hand);
  await enterHours(hand);
  const rows = [
    'Ilsa Vorn;Open;410/400/410;390x3 400x3 410x3 420x3 430x3 440x3;13;1320 ft',
    'Juri Tavel;Stock;162.5x2;160x2 162.5x2 165x2 167.5x2 170x2 172.5x2;18;1320 ft',
    'Oda Rask;;400x3;390x3 400x3 410x3;22;900 ft',
    'Mika Brandvold;;380x3;370x3 380x3 390x3 400x3 410x3 420x3;22;900 ft',
  ];
  await hand.fill('Table', ['Racer;Class;Mains;Box;Temp (F);Elevation', ...rows].join('\n'));
  await hand.press('Add 4 racers');
  await page.getByRole('region', { name: 'Racers by the hour' }).waitFor();
}
/** As it stands the next time it is opened, with nothing left of how it was typed. */
const again = (page) => page.reload();
const NO_HOURS = NIGHT_STATES.find(({ name }) => name === 'no-hours')?.steps ?? [];
const club = (racers, ...more) => [(page) => clubNightOf(page, racers), ...more, again];

/** The night of 16 January as it is in a browser the morning after: read four times, its last two runs not told. */
async function pastNight(page) {
  await page.getByRole('button', { name: 'Backup' }).click();
  await page.getByLabel('Open a backup file').setInputFiles({
    name: 'backup.json',
    mimeType: 'application/json',
    buffer: Buffer.from(partlyToldNightFile()),
  });
  await page.getByRole('button', { name: /^Replace/ }).click();
  await page.getByRole('dialog').waitFor({ state: 'hidden' });
}

/** What a forecast service, or the way to it, answers. */
const FAULTS = {
  down: (route) =>
    route.fulfill({
      status: 503,
      headers: { 'retry-after': '30' },
      contentType: 'application/problem+json',
      body: JSON.stringify({
        type: 'about:blank',
        status: 503,
        detail:
          'No weather service answered (Open-Meteo took too long and MET Norway had an error). Try again in 30 seconds. Type the hours yourself meanwhile.',
      }),
    }),
  busy: (route) =>
    route.fulfill({
      status: 429,
      headers: { 'retry-after': '60' },
      contentType: 'application/problem+json',
      body: JSON.stringify({
        type: 'about:blank',
        status: 429,
        detail: 'Too many requests from this address. Try again in 60 seconds.',
      }),
    }),
  'no-signal': (route) => route.abort('internetdisconnected'),
};
const FORECAST = '**/api/forecast?**';
const weatherIs = (words) => (page) =>
  page.getByRole('region', { name: 'Weather', exact: true }).getByText(words).first().waitFor();

/** Follows a forecast, and goes by it alone. */
async function follow(page) {
  await page.getByRole('link', { name: 'Get the forecast' }).first().click();
  await page.getByRole('dialog').getByRole('button', { name: 'Get the forecast' }).click();
  await page.getByRole('dialog').waitFor({ state: 'hidden' });
}
const failing = (fault) => (page) => page.route(FORECAST, FAULTS[fault]);
const fails = (fault) => [
  {
    name: `forecast-old-${fault}`,
    path: '/',
    clock: '18:15',
    steps: [
      follow,
      weatherIs('fresh'),
      press('Go by the forecast alone'),
      failing(fault),
      later('21:40'),
      weatherIs('No newer forecast'),
    ],
  },
  {
    name: `forecast-none-${fault}`,
    path: '/',
    clock: '18:15',
    steps: [...NO_HOURS, failing(fault), again, follow, weatherIs('No forecast came')],
  },
];

export const SCENES = [
  ...NIGHT_STATES.map((state) => ({ ...state, name: `night-${state.name}` })),
  ...Object.keys(FAULTS).flatMap(fails),
  { name: 'night-told', path: '/', clock: '20:05', steps: [press(/^Done: /)] },
  { name: 'night-numbers', path: '/#numbers', clock: '19:40', subject: '#numbers' },
  { name: 'night-jets-dialog', path: '/', clock: '19:40', steps: [press('Other jets')] },
  { name: 'night-schedule-dialog', path: '/', clock: '19:40', steps: [press('Running late?')] },
  { name: 'night-reading-dialog', path: '/#reading', clock: '19:40', subject: 'dialog[open]' },
  { name: 'night-display-dialog', path: '/', clock: '19:40', steps: [press('Display')] },
  { name: 'night-new', path: '/#new-night', clock: '19:40', subject: 'dialog[open]' },
  { name: 'night-event', path: '/#event', clock: '19:40', subject: 'dialog[open]' },
  { name: 'night-machine', path: '/#machine', clock: '19:40', subject: 'dialog[open]' },
  { name: 'night-hours', path: '/#hours', clock: '19:40', subject: 'dialog[open]' },
  { name: 'night-share', path: '/', clock: '19:40', steps: [press('Share this night')], subject: '#share' },
  { name: 'club', path: '/club', clock: '19:40' },
  { name: 'club-six', path: '/club', clock: '18:15', steps: club(6) },
  { name: 'club-print', path: '/club', clock: '18:15', steps: club(6, go('/club#print')) },
  { name: 'trail', path: '/trail', clock: '19:40' },
  { name: 'log', path: '/log', clock: '21:40' },
  { name: 'log-form', path: '/log', clock: '21:40', steps: [press('Add a run by hand')] },
  { name: 'machines', path: '/machines', clock: '19:40' },
  {
    name: 'machines-open',
    path: '/machines',
    clock: '19:40',
    steps: [press(/^Baselines, parts, learning/)],
  },
  { name: 'compare', path: '/compare', clock: '19:40' },
  { name: 'after', path: '/machines', clock: '08:15', steps: [pastNight, go('/after'), again] },
  { name: 'log-runs', path: '/machines', clock: '08:15', steps: [pastNight, go('/log'), again] },
  { name: 'open', path: '/open', clock: '19:40' },
  { name: 'about', path: '/about', clock: '19:40' },
  { name: 'board-none', path: '/board', clock: '19:40' },
  { name: 'not-found', path: '/nowhere', clock: '19:40' },
  ...[1, 6, 40, 100].flatMap((racers) => [
    {
      name: `wall-${racers}`,
      path: '/club',
      clock: '18:15',
      wall: true,
      steps: club(racers, go('/club#wall')),
    },
  ]),
  {
    name: 'wall-stop',
    path: '/club',
    clock: '18:15',
    wall: true,
    steps: [clubWithStop, go('/club#wall'), again],
  },
  {
    name: 'wall-40-soon',
    path: '/club',
    clock: '18:15',
    wall: true,
    steps: club(40, go('/club#wall'), later('18:41')),
  },
];
