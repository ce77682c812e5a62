import type { Page } from '@playwright/test';
import { instantOf } from './clock';

type Step = (page: Page) => Promise<unknown>;

/** A state of the night: where, at what time, and what is done before it stands. */
export type NightState = {
  readonly name: string;
  readonly path: '/' | '/#track';
  readonly clock: string;
  readonly steps?: readonly Step[];
};

const reload: Step = (page) => page.reload();
const press =
  (name: string | RegExp): Step =>
  (page) =>
    page.getByRole('button', { name }).first().click();
const gone =
  (name: RegExp): Step =>
  (page) =>
    page.getByRole('button', { name }).waitFor({ state: 'detached' });
const putIn =
  (jets: readonly string[]): Step =>
  async (page) => {
    await press('Other jets')(page);
    for (const [i, jet] of jets.entries())
      await page.getByLabel(new RegExp(`^Main jet(, carburettor ${i + 1})?$`)).selectOption(jet);
    await press('Done: it is in')(page);
    await press('Dismiss')(page);
  };
/** Later the same night, on what was done before. */
const later =
  (clock: string): Step =>
  async (page) => {
    await page.clock.setFixedTime(instantOf(clock));
    await page.reload();
  };

/** Changes a record of the demo by hand: "value" is what it holds, and what the expression says is put in its place. */
const change =
  (table: string, id: string, expression: string): Step =>
  (page) =>
    page.evaluate(`new Promise((resolve, reject) => {
      const opened = indexedDB.open('heavy-air');
      opened.onerror = () => reject(opened.error);
      opened.onsuccess = () => {
        const transaction = opened.result.transaction('records', 'readwrite');
        const records = transaction.objectStore('records');
        const read = records.get(${JSON.stringify([table, id])});
        read.onsuccess = () => {
          const { value } = read.result;
          records.put({ ...read.result, value: { ...value, ${expression} } });
        };
        transaction.oncomplete = () => {
          opened.result.close();
          resolve();
        };
      };
    })`);
const machine = (expression: string) =>
  change('machines', 'demo-machine', `machine: { ...value.machine, ${expression} }`);
const event = (expression: string) => change('events', 'demo-night', expression);

/** The box of the demo with nothing rich in it. */
const POOR_BOX = machine('box: value.machine.box.filter(({ size }) => size <= 410)');
const ONE = machine('carburettors: value.machine.carburettors.slice(0, 1)');
const SIX = machine(
  'carburettors: [1, 2].flatMap(() => value.machine.carburettors), box: value.machine.box.map((jet) => ({ ...jet, count: 6 }))',
);
/** Jets with a half in their number, which take half as much room again. */
const HALVES =
  machine(`carburettors: value.machine.carburettors.map((each) => ({ ...each, main: each.main + 2.5 })),
  box: value.machine.box.map((jet) => ({ ...jet, size: jet.size + 2.5 }))`);
/** Sixty runs, one every six minutes. */
const SIXTY = event(`event: { ...value.event, runs: Array.from({ length: 60 }, (_, i) => ({
  ...value.event.runs[0],
  name: 'Heat ' + (i + 1),
  start: new Date(Date.parse(value.event.runs[0].start) + 360000 * i).toISOString(),
  end: new Date(Date.parse(value.event.runs[0].start) + 360000 * i + 240000).toISOString(),
})) }`);
/** So cold by midnight that swaps follow close on each other. */
const STEEP = event(`typed: { ...value.typed, hours: value.typed.hours.map((hour, i) => ({
  ...hour, temperatureC: hour.temperatureC - 3 * i,
})) }`);

/** Every state the night page can be in with the demo night, in shape: for the eye in pictures, and by rule in tests. */
export const NIGHT_STATES: readonly NightState[] = [
  { name: 'before', path: '/', clock: '18:15' },
  { name: 'ahead', path: '/', clock: '19:40' },
  { name: 'due', path: '/', clock: '20:05' },
  { name: 'late', path: '/', clock: '20:20', steps: [putIn(['410', '400', '410'])] },
  { name: 'done', path: '/', clock: '20:05', steps: [press(/^Done: /), press('Dismiss'), gone(/^Done: /)] },
  { name: 'missed', path: '/', clock: '18:15', steps: [press('This is my plan'), later('21:51')] },
  { name: 'lean', path: '/', clock: '23:50', steps: [putIn(['390', '380', '390'])] },
  { name: 'rich', path: '/', clock: '19:40', steps: [putIn(['450', '440', '450'])] },
  { name: 'stop', path: '/', clock: '19:40', steps: [POOR_BOX, reload] },
  { name: 'steep', path: '/', clock: '19:40', steps: [STEEP, reload] },
  { name: 'one', path: '/', clock: '19:40', steps: [ONE, reload] },
  { name: 'six', path: '/', clock: '19:40', steps: [SIX, reload] },
  { name: 'halves', path: '/', clock: '19:40', steps: [HALVES, reload] },
  { name: 'sixty', path: '/', clock: '19:40', steps: [SIXTY, reload] },
  { name: 'out', path: '/', clock: '19:40', steps: [press('Knocked out'), press('Dismiss')] },
  { name: 'no-hours', path: '/', clock: '19:40', steps: [event('typed: null'), reload] },
  { name: 'no-box', path: '/', clock: '19:40', steps: [machine('box: []'), reload] },
  { name: 'track', path: '/#track', clock: '20:05' },
  { name: 'track-stop', path: '/#track', clock: '19:40', steps: [POOR_BOX, reload] },
  {
    name: 'track-missed',
    path: '/',
    clock: '18:15',
    steps: [
      press('This is my plan'),
      (page) => page.evaluate("window.location.hash = 'track'"),
      later('21:51'),
    ],
  },
];
