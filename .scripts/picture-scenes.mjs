// What `npm run pictures` takes: every page, and every state of the night. A scene a line: its name, where, at what time,
// and what is done before it is taken.
import { register } from 'tsx/esm/api';

register();
const { clubNightOf } = await import('../tests/browser/club-hand.ts');
const { NIGHT_STATES } = await import('../tests/browser/night-states.ts');

/** A clock of the demo night, in its own zone, in January. */
export const at = (clock) => `2027-01-${clock < '12:00' ? '17' : '16'}T${clock}:00-06:00`;

const press = (name) => (page) => page.getByRole('button', { name }).first().click();
const go = (address) => (page) => page.evaluate((to) => window.location.assign(to), address);
const later = (clock) => async (page) => {
  await page.clock.setFixedTime(at(clock));
  await page.reload();
};
/** As it stands the next time it is opened, with nothing left of how it was typed. */
const again = (page) => page.reload();
const club = (racers, ...more) => [(page) => clubNightOf(page, racers), ...more, again];

export const SCENES = [
  ...NIGHT_STATES.map((state) => ({ ...state, name: `night-${state.name}` })),
  { name: 'night-told', path: '/', clock: '20:05', steps: [press(/^Done: /)] },
  { name: 'night-numbers', path: '/#numbers', clock: '19:40' },
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
