// `npm run pictures`: every page and every state of the night as they look, at the sizes people hold, by day, by night,
// without colour and on paper, into .cache/pictures. For the eye of whoever changes the look: nothing is compared.
// `npm run pictures night` takes only those whose name begins so; PORT=3300 keeps clear of another checkout.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { fakeWeatherEnvironment } from './fake-weather-environment.mjs';
import { chromiumHere } from './find-chromium.mjs';
import { buildIfNeeded, installIfNeeded, ROOT } from './prepare.mjs';
import { startGroup } from './process-group.mjs';
import { withShiftedClock } from './shifted-clock.mjs';

const TO = join(ROOT, '.cache', 'pictures');
const PORT = Number(process.env.PORT ?? 3000);
const BASE = `http://127.0.0.1:${PORT}`;
const ONLY = process.argv[2] ?? '';

/** A clock of the demo night, in its own zone, in January. */
const at = (clock) => `2027-01-${clock < '12:00' ? '17' : '16'}T${clock}:00-06:00`;

const SIZES = {
  phone: [360, 740],
  narrow: [280, 653],
  lying: [740, 360],
  desk: [1280, 800],
  wide: [1920, 1080],
};
/** How each of them looks: the theme, and whether colour is taken away. */
const LOOKS = {
  day: { colorScheme: 'light' },
  night: { colorScheme: 'dark' },
  grey: { colorScheme: 'dark', grey: true },
};

const press = (name) => (page) => page.getByRole('button', { name }).first().click();
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
/** The box of the demo with nothing rich in it. */
const poorBox = (page) =>
  page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const opened = indexedDB.open('heavy-air');
        opened.onerror = () => reject(opened.error);
        opened.onsuccess = () => {
          const transaction = opened.result.transaction('records', 'readwrite');
          const records = transaction.objectStore('records');
          const read = records.get(['machines', 'demo-machine']);
          read.onsuccess = () => {
            const { value } = read.result;
            const box = value.machine.box.filter(({ size }) => size <= 410);
            records.put({ ...read.result, value: { ...value, machine: { ...value.machine, box } } });
          };
          transaction.oncomplete = () => {
            opened.result.close();
            resolve();
          };
        };
      }),
  );

/** A picture a line: its name, where, at what time, and what is done before it is taken. */
const SCENES = [
  { name: 'night-before', path: '/', clock: '18:15' },
  { name: 'night-ahead', path: '/', clock: '19:40' },
  { name: 'night-due', path: '/', clock: '20:05' },
  { name: 'night-late', path: '/', clock: '20:20', steps: [putIn(['410', '400', '410'])] },
  { name: 'night-done', path: '/', clock: '20:05', steps: [press(/^Done: /), press('Dismiss')] },
  { name: 'night-missed', path: '/', clock: '18:15', steps: [press('This is my plan'), later('21:51')] },
  { name: 'night-lean', path: '/', clock: '23:50', steps: [putIn(['390', '380', '390'])] },
  { name: 'night-rich', path: '/', clock: '19:40', steps: [putIn(['450', '440', '450'])] },
  { name: 'night-stop', path: '/', clock: '19:40', steps: [poorBox, later('19:41')] },
  { name: 'night-out', path: '/', clock: '19:40', steps: [press('Knocked out'), press('Dismiss')] },
  { name: 'night-numbers', path: '/#numbers', clock: '19:40' },
  { name: 'night-track', path: '/#track', clock: '20:05' },
  { name: 'night-jets-dialog', path: '/', clock: '19:40', steps: [press('Other jets')] },
  { name: 'night-schedule-dialog', path: '/', clock: '19:40', steps: [press('Running late?')] },
  { name: 'club', path: '/club', clock: '19:40' },
  { name: 'trail', path: '/trail', clock: '19:40' },
  { name: 'log', path: '/log', clock: '21:40' },
  { name: 'machines', path: '/machines', clock: '19:40' },
  { name: 'compare', path: '/compare', clock: '19:40' },
  { name: 'after', path: '/after', clock: '23:59' },
  { name: 'open', path: '/open', clock: '19:40' },
  { name: 'about', path: '/about', clock: '19:40' },
];

async function settled(page) {
  await page.waitForLoadState('networkidle');
  await page.evaluate(() => document.fonts.ready);
  await page.evaluate(
    () => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))),
  );
}

/** The page of a scene in one size and look, the demo night in it. */
async function open(browser, { path, clock, steps = [] }, size, { colorScheme }) {
  const [width, height] = SIZES[size];
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme,
    locale: 'en-GB',
    timezoneId: 'America/Chicago',
    serviceWorkers: 'block',
    deviceScaleFactor: width < 800 ? 2 : 1,
  });
  await context.clock.setFixedTime(at(clock));
  const page = await context.newPage();
  await page.goto(`${BASE}/`);
  await page.getByRole('region', { name: 'Next', exact: true }).waitFor();
  if (path !== '/') await page.goto(`${BASE}${path}`);
  for (const step of steps) {
    await settled(page);
    await step(page);
  }
  await settled(page);
  return { context, page };
}

async function take(browser, scene) {
  for (const size of Object.keys(SIZES)) {
    for (const [look, how] of Object.entries(LOOKS)) {
      // Every look on the sizes most people hold; by day only on the others.
      if (look !== 'day' && size !== 'phone' && size !== 'desk') continue;
      const { context, page } = await open(browser, scene, size, how);
      if (how.grey) await page.addStyleTag({ content: 'html { filter: grayscale(1) !important }' });
      const name = `${scene.name}-${size}-${look}`;
      await page.screenshot({ path: join(TO, `${name}.png`) });
      if (look === 'day') await page.screenshot({ path: join(TO, `${name}-whole.png`), fullPage: true });
      if (look === 'day' && size === 'phone')
        await page.pdf({ path: join(TO, `${scene.name}-paper.pdf`), format: 'A4' });
      await context.close();
    }
  }
  console.log(scene.name);
}

await installIfNeeded();
await buildIfNeeded();
mkdirSync(TO, { recursive: true });
const clock = {
  NODE_OPTIONS: withShiftedClock(process.env.NODE_OPTIONS),
  CLOCK_SHIFT_MS: String(Date.parse(at('18:15')) - Date.now()),
  NEXT_TELEMETRY_DISABLED: '1',
};
const npx = (args, more = {}) =>
  startGroup('npx', ['--no-install', ...args], { cwd: ROOT, env: { ...process.env, ...clock, ...more } });
const servers = [
  npx(['tsx', 'tests/support/fake-weather/serve.ts', '--port', String(PORT + 1)]),
  startGroup(process.execPath, ['.next/serve/serve.mjs'], {
    cwd: ROOT,
    env: {
      ...process.env,
      ...clock,
      ...fakeWeatherEnvironment(`http://127.0.0.1:${PORT + 1}`),
      PORT: String(PORT),
    },
  }),
];
try {
  for (let tries = 0; tries < 100; tries += 1) {
    if (
      await fetch(`${BASE}/api/health`).then(
        ({ ok }) => ok,
        () => false,
      )
    )
      break;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  const browser = await chromium.launch({
    executablePath: chromiumHere() ?? undefined,
    args: ['--no-sandbox'],
  });
  for (const scene of SCENES.filter(({ name }) => name.startsWith(ONLY))) await take(browser, scene);
  await browser.close();
  console.log(`In ${TO}`);
} finally {
  for (const server of servers) await server.end();
}
