// `npm run engines`: the app in WebKit and Firefox themselves. Installs what a Debian machine lacks, and says so; where
// an engine cannot be had, says that and leaves it out.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { freePort } from './free-port.mjs';
import { buildIfNeeded, installIfNeeded, run } from './prepare.mjs';

const find = (...names) =>
  names
    .flatMap((name) => (process.env.PATH ?? '').split(delimiter).map((folder) => join(folder, name)))
    .find((path) => existsSync(path));

/** WebKitGTK keeps its small browser in a folder of its own, below one for the kind of processor. */
function findMiniBrowser() {
  const libraries = '/usr/lib';
  if (!existsSync(libraries)) return undefined;
  return ['webkitgtk-6.0', 'webkit2gtk-4.1', 'webkit2gtk-4.0']
    .flatMap((kind) => readdirSync(libraries).map((folder) => join(libraries, folder, kind, 'MiniBrowser')))
    .find((path) => existsSync(path));
}

const ENGINES = [
  {
    name: 'webkit',
    packages: ['webkit2gtk-driver', 'xvfb'],
    find: () => {
      const [driver, browser, screen] = [find('WebKitWebDriver'), findMiniBrowser(), find('Xvfb')];
      return driver && browser && screen ? { WEBKIT_DRIVER: driver, WEBKIT_BROWSER: browser } : null;
    },
  },
  {
    name: 'firefox',
    packages: ['firefox-esr'],
    find: () => {
      const firefox = find('firefox-esr', 'firefox');
      return firefox ? { FIREFOX: firefox } : null;
    },
  },
];

/** As root on Debian only: elsewhere nobody's machine is changed. */
function install(packages) {
  if (!find('apt-get') || process.getuid?.() !== 0) return;
  console.log(`Installing ${packages.join(' and ')} ...`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const apt = (...args) => spawnSync('apt-get', [...args], { stdio: ['ignore', 'ignore', 'inherit'], env });
  apt('update', '-q');
  apt('install', '-q', '-y', '--no-install-recommends', ...packages);
}

const missing = ENGINES.filter((engine) => engine.find() === null);
if (missing.length > 0) install(missing.flatMap(({ packages }) => packages));
const found = ENGINES.filter((engine) => engine.find() !== null);
for (const { name, packages } of ENGINES.filter((engine) => !found.includes(engine)))
  console.log(`Left out: ${name} is not on this machine. On Debian: apt-get install ${packages.join(' ')}`);
if (found.length === 0) process.exit(0);

await installIfNeeded();
await buildIfNeeded();
// Node 20 has the web socket that Firefox is spoken to over behind a switch.
const nodeOptions = typeof WebSocket === 'undefined' ? { NODE_OPTIONS: '--experimental-websocket' } : {};
await run(
  'npx',
  [
    '--no-install',
    'playwright',
    'test',
    '--config',
    'tests/engines/playwright.config.ts',
    ...process.argv.slice(2),
  ],
  {
    ...Object.assign({}, ...found.map((engine) => engine.find())),
    ...nodeOptions,
    ENGINES: found.map(({ name }) => name).join(' '),
    ENGINES_PORT: String(await freePort()),
    ENGINES_WEATHER_PORT: String(await freePort()),
  },
);
