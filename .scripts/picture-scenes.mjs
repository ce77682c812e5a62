// What `npm run pictures` takes: every page, and every state of the night. A scene a line: its name, where, at what time,
// and what is done before it is taken.
import { register } from 'tsx/esm/api';

register();
const { clubNightOf } = await import('../tests/browser/club-hand.ts');

/** A clock of the demo night, in its own zone, in January. */
export const at = (clock) => `2027-01-${clock < '12:00' ? '17' : '16'}T${clock}:00-06:00`;

const press = (name) => (page) => page.getByRole('button', { name }).first().click();
const go = (address) => (page) => page.evaluate((to) => window.location.assign(to), address);
const putIn = (jets) => async (page) => {
  await press('Other jets')(page);
  for (const [i, jet] of jets.entries())
    await page.getByLabel(new RegExp(`^Main jet(, carburettor ${i + 1})?$`)).selectOption(jet);
  await press('This is in')(page);
  await press('Dismiss')(page);
};
/** Later the same night, on what was done before. */
const later = (clock) => async (page) => {
  await page.clock.setFixedTime(at(clock));
  await page.reload();
};
/** Changes a record of the demo by hand; what changes it is sent to the page as it is written here. */
const change = (table, id, how) => (page) =>
  page.evaluate(`new Promise((resolve, reject) => {
    const opened = indexedDB.open('heavy-air');
    opened.onerror = () => reject(opened.error);
    opened.onsuccess = () => {
      const transaction = opened.result.transaction('records', 'readwrite');
      const records = transaction.objectStore('records');
      const read = records.get(${JSON.stringify([table, id])});
      read.onsuccess = () => records.put({ ...read.result, value: (${how})(read.result.value) });
      transaction.oncomplete = () => {
        opened.result.close();
        resolve();
      };
    };
  })`);
const machine = (how) => change('machines', 'demo-machine', how);
const event = (how) => change('events', 'demo-night', how);
/** The box of the demo with nothing rich in it. */
const poorBox = machine((value) => ({
  ...value,
  machine: { ...value.machine, box: value.machine.box.filter(({ size }) => size <= 410) },
}));
const emptyBox = machine((value) => ({ ...value, machine: { ...value.machine, box: [] } }));
const oneCarburettor = machine((value) => ({
  ...value,
  machine: { ...value.machine, carburettors: value.machine.carburettors.slice(0, 1) },
}));
const sixCarburettors = machine((value) => ({
  ...value,
  machine: {
    ...value.machine,
    carburettors: [...value.machine.carburettors, ...value.machine.carburettors],
    box: value.machine.box.map((jet) => ({ ...jet, count: 6 })),
  },
}));
const noHours = event((value) => ({ ...value, typed: null }));
/** Sixty runs, one every six minutes. */
const sixtyRuns = event((value) => {
  const [run] = value.event.runs;
  const moved = (time, minutes) => new Date(Date.parse(time) + 60_000 * minutes).toISOString();
  const runs = Array.from({ length: 60 }, (_, i) => ({
    ...run,
    name: `Heat ${i + 1}`,
    start: moved(run.start, 6 * i),
    end: moved(run.start, 6 * i + 4),
  }));
  return { ...value, event: { ...value.event, runs } };
});
/** So cold by midnight that swaps follow close on each other. */
const steepNight = event((value) => ({
  ...value,
  typed: {
    ...value.typed,
    hours: value.typed.hours.map((hour, i) => ({ ...hour, temperatureC: hour.temperatureC - 3 * i })),
  },
}));
const reload = (page) => page.reload();
const club = (racers, ...more) => [(page) => clubNightOf(page, racers), ...more];

export const SCENES = [
  { name: 'night-before', path: '/', clock: '18:15' },
  { name: 'night-ahead', path: '/', clock: '19:40' },
  { name: 'night-due', path: '/', clock: '20:05' },
  { name: 'night-late', path: '/', clock: '20:20', steps: [putIn(['410', '400', '410'])] },
  { name: 'night-done', path: '/', clock: '20:05', steps: [press(/^Done: /), press('Dismiss')] },
  { name: 'night-told', path: '/', clock: '20:05', steps: [press(/^Done: /)] },
  { name: 'night-missed', path: '/', clock: '18:15', steps: [press('This is my plan'), later('21:51')] },
  { name: 'night-lean', path: '/', clock: '23:50', steps: [putIn(['390', '380', '390'])] },
  { name: 'night-rich', path: '/', clock: '19:40', steps: [putIn(['450', '440', '450'])] },
  { name: 'night-stop', path: '/', clock: '19:40', steps: [poorBox, later('19:41')] },
  { name: 'night-steep', path: '/', clock: '19:40', steps: [steepNight, reload] },
  { name: 'night-one', path: '/', clock: '19:40', steps: [oneCarburettor, reload] },
  { name: 'night-six', path: '/', clock: '19:40', steps: [sixCarburettors, reload] },
  { name: 'night-sixty', path: '/', clock: '19:40', steps: [sixtyRuns, reload] },
  { name: 'night-out', path: '/', clock: '19:40', steps: [press('Knocked out'), press('Dismiss')] },
  { name: 'night-no-hours', path: '/', clock: '19:40', steps: [noHours, reload] },
  { name: 'night-no-box', path: '/', clock: '19:40', steps: [emptyBox, reload] },
  { name: 'night-numbers', path: '/#numbers', clock: '19:40' },
  { name: 'night-track', path: '/#track', clock: '20:05' },
  { name: 'night-track-stop', path: '/#track', clock: '19:40', steps: [poorBox, reload] },
  {
    name: 'night-track-missed',
    path: '/',
    clock: '18:15',
    steps: [press('This is my plan'), go('/#track'), later('21:51')],
  },
  { name: 'night-jets-dialog', path: '/', clock: '19:40', steps: [press('Other jets')] },
  { name: 'night-schedule-dialog', path: '/', clock: '19:40', steps: [press('Running late?')] },
  { name: 'night-reading-dialog', path: '/#reading', clock: '19:40' },
  { name: 'night-display-dialog', path: '/', clock: '19:40', steps: [press('Display')] },
  { name: 'night-new', path: '/#new-night', clock: '19:40' },
  { name: 'night-event', path: '/#event', clock: '19:40' },
  { name: 'night-machine', path: '/#machine', clock: '19:40' },
  { name: 'night-hours', path: '/#hours', clock: '19:40' },
  { name: 'night-share', path: '/', clock: '19:40', steps: [press('Share this night')] },
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
    steps: [press(/^Baselines, parts and learning/)],
  },
  { name: 'compare', path: '/compare', clock: '19:40' },
  { name: 'after', path: '/after', clock: '23:59' },
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
    name: 'wall-40-soon',
    path: '/club',
    clock: '18:15',
    wall: true,
    steps: club(40, go('/club#wall'), later('18:41')),
  },
];
