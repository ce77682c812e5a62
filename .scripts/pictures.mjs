// `npm run pictures`: every page and every state of the night as they look, at the sizes people hold, by day, by night,
// without colour and on paper, into .cache/pictures. For the eye of whoever changes the look: nothing is compared.
// `npm run pictures night club-six` takes only those whose name begins so; PORT=3300 keeps clear of another checkout.
// `npm run pictures readme` makes the README's anew.
import { copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { fakeWeatherEnvironment } from './fake-weather-environment.mjs';
import { chromiumHere } from './find-chromium.mjs';
import { at, SCENES } from './picture-scenes.mjs';
import { buildIfNeeded, installIfNeeded } from './prepare.mjs';
import { startGroup } from './process-group.mjs';
import { withShiftedClock } from './shifted-clock.mjs';
import { ROOT } from './sources.mjs';

const TO = join(ROOT, '.cache', 'pictures');
const PORT = Number(process.env.PORT ?? 3000);
const BASE = `http://127.0.0.1:${PORT}`;
/** The README's pictures, each by what it is made from. */
const README = {
  'night-phone': 'night-ahead-phone-night',
  'trail-phone': 'trail-phone-day',
  'night-desk': 'night-ahead-desk-day',
  'club-wall': 'wall-stop-low-night',
};
const forReadme = process.argv[2] === 'readme';
const ONLY = forReadme ? ['night-ahead', 'trail', 'wall-stop'] : process.argv.slice(2);

const SIZES = {
  phone: [360, 740],
  narrow: [280, 653],
  lying: [740, 360],
  desk: [1280, 800],
  wide: [1920, 1080],
};
/** Those under a finger, where there are no keys. */
const TOUCHED = ['phone', 'narrow', 'lying'];
/** What hangs on a trailer's wall. */
const WALLS = { low: [1280, 720], wide: [1920, 1080], great: [3840, 2160] };
/** From a phone's window on the paper of one half of the world, from a desk's on that of the other. */
const PAPERS = { phone: 'A4', desk: 'Letter' };

/** No more than a bound on what is waited for: a machine with other work takes its time [ms]. */
const PATIENCE_MS = 180_000;
/** What each page has asked for and not been answered yet. */
const asked = new WeakMap();

function watchRequests(page) {
  const open = new Set();
  asked.set(page, open);
  page.on('request', (request) => open.add(request));
  for (const end of ['requestfinished', 'requestfailed']) page.on(end, (request) => open.delete(request));
}

/** Two frames on; whether by then nothing in sight says of itself that something is still to come. */
const isStill = () =>
  new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))
    .then(() => document.fonts.ready)
    .then(
      () =>
        document.readyState === 'complete' &&
        document.querySelector('main[aria-busy="true"]') === null &&
        [...document.querySelectorAll('main p, main output, main [role="status"]')].every((said) => {
          // What is out of sight comes when it is scrolled to.
          const { top, bottom } = said.getBoundingClientRect();
          return !/^[A-Z][^.]*…$/.test(said.textContent) || bottom < 0 || top > window.innerHeight;
        }),
    );

/** Nothing is asked for any more and nothing said to be coming, three looks in a row: what a press began has begun by then. */
async function settled(page) {
  const until = Date.now() + PATIENCE_MS;
  for (let looks = 0; looks < 3; ) {
    // A page that is being left answers nothing.
    const still = await page.evaluate(isStill).catch(() => false);
    looks = still && asked.get(page).size === 0 ? looks + 1 : 0;
    if (Date.now() > until) throw new Error('it does not come to rest');
  }
}

/** The page of a scene, the demo night in it: as a phone opens it, or a wall. */
async function open(browser, { path, clock, steps = [] }, [width, height]) {
  const context = await browser.newContext({
    baseURL: BASE,
    viewport: { width, height },
    colorScheme: 'light',
    locale: 'en-GB',
    timezoneId: 'America/Chicago',
    serviceWorkers: 'block',
  });
  context.setDefaultTimeout(PATIENCE_MS);
  await context.clock.setFixedTime(at(clock));
  const page = await context.newPage();
  watchRequests(page);
  await page.goto('/');
  // Awake, with the demo in its store.
  await page.locator('main:not([aria-busy])').getByRole('region', { name: 'Next', exact: true }).waitFor();
  if (path !== '/') await page.goto(path);
  for (const step of steps) {
    await settled(page);
    await step(page);
  }
  return { context, page };
}

/** A picture of a whole page is further than any screen reaches: also what is only drawn near it is drawn. */
const NEAR = '* { content-visibility: visible !important }';
/** Without colour; what lies above the page, as a dialog does, is no part of it to a filter. */
const GREY = 'html, dialog { filter: grayscale(1) !important }';

const isWanted = (name) => ONLY.length === 0 || ONLY.some((start) => name.startsWith(start));

async function take(browser, scene) {
  const sizes = Object.entries(scene.wall ? WALLS : SIZES);
  const { context, page } = await open(browser, scene, sizes[0][1]);
  await page.addStyleTag({ content: NEAR });
  const device = await context.newCDPSession(page);
  for (const [size, [width, height]] of sizes) {
    await device.send('Emulation.setTouchEmulationEnabled', { enabled: TOUCHED.includes(size) });
    await page.setViewportSize({ width, height });
    await settled(page);
    if (scene.subject === undefined) await page.evaluate(() => window.scrollTo(0, 0));
    else await page.locator(scene.subject).evaluate((subject) => subject.scrollIntoView());
    const to = (look, kind = 'png') => join(TO, `${scene.name}-${size}-${look}.${kind}`);
    const whole = size === 'phone' || size === 'desk';
    // A thumb on the page, as it takes to come to the browser's menu: the chart is fetched then.
    if (whole) {
      await page.evaluate(() => window.dispatchEvent(new PointerEvent('pointerdown')));
      await settled(page);
      await page.pdf({ path: to('paper', 'pdf'), preferCSSPageSize: true, format: PAPERS[size] });
    }
    for (const look of ['day', 'night']) {
      await page.emulateMedia({ colorScheme: look === 'day' ? 'light' : 'dark' });
      await page.screenshot({ path: to(look) });
      if (whole) await page.screenshot({ path: to(`${look}-whole`), fullPage: true });
    }
    const grey = await page.addStyleTag({ content: GREY });
    await page.screenshot({ path: to('grey') });
    await grey.evaluate((style) => style.remove());
    await page.emulateMedia({ colorScheme: 'light' });
  }
  await context.close();
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
  // One that cannot be taken is named at the end, and keeps no other from being seen.
  const failed = [];
  for (const scene of SCENES.filter(({ name }) => isWanted(name)))
    await take(browser, scene).catch((problem) => {
      console.error(`${scene.name}: ${problem.message}`);
      failed.push(scene.name);
    });
  await browser.close();
  console.log(`In ${TO}`);
  if (forReadme)
    for (const [to, from] of Object.entries(README))
      copyFileSync(join(TO, `${from}.png`), join(ROOT, '.pictures', `${to}.png`));
  if (failed.length > 0) {
    console.error(`Not taken: ${failed.join(', ')}`);
    process.exitCode = 1;
  }
} finally {
  for (const server of servers) await server.end();
}
