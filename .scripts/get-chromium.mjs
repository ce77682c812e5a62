// Gets a Chromium on a machine that has none, and says what it does before doing it.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromiumHere } from './find-chromium.mjs';
import { runGroup } from './process-group.mjs';
import { ROOT } from './sources.mjs';

const aptGet = (...names) => ({
  says: `Installing ${names.join(' and ')} with apt-get ...`,
  steps: [
    ['apt-get', ['update', '-q']],
    ['apt-get', ['install', '-q', '-y', '--no-install-recommends', ...names]],
  ],
});

/**
 * The ways to a Chromium that this machine allows, best first: the system's package manager where it may be used, then
 * the download that Playwright offers, with the libraries it needs where those may be installed.
 */
export function waysToChromium({ isRoot, hasAptGet }) {
  const may = isRoot && hasAptGet;
  return [
    // A page without a font has nothing to measure.
    ...(may
      ? [aptGet('chromium-headless-shell', 'fonts-liberation'), aptGet('chromium', 'fonts-liberation')]
      : []),
    {
      says: 'Downloading a Chromium with Playwright ...',
      steps: [
        [
          'npx',
          [
            '--no-install',
            'playwright',
            'install',
            ...(may ? ['--with-deps'] : []),
            'chromium-headless-shell',
          ],
        ],
      ],
    },
  ];
}

export const IN_WORDS = [
  'The browser tests need Chromium, and none could be got here.',
  'On Debian or Ubuntu, as root:  apt-get install chromium-headless-shell fonts-liberation  (or chromium)',
  'Elsewhere: install Chromium or Chrome, and set CHROMIUM_PATH to its program if it is still not found.',
].join('\n');

function hasAptGet() {
  return (process.env.PATH ?? '').split(delimiter).some((folder) => existsSync(join(folder, 'apt-get')));
}

/** A program that is there may still lack a library: it must be able to say its version. */
function complaintOf(path) {
  const { status, stderr, error } = spawnSync(path, ['--no-sandbox', '--version'], { encoding: 'utf8' });
  return status === 0 ? null : (error?.message ?? stderr.trim());
}

async function took({ says, steps }) {
  console.log(says);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const [command, args] of steps)
    if ((await runGroup(command, args, { cwd: ROOT, env })) !== 0) {
      console.log(`"${command} ${args.join(' ')}" did not work.`);
      return false;
    }
  return true;
}

function stop(words) {
  console.error(words);
  process.exit(1);
}

/** The Chromium of this machine; where there is none, one is got. Without any nothing goes on. */
export async function getChromium({ find = chromiumHere, ways } = {}) {
  if (find() === null) {
    if (process.env.CHROMIUM_PATH) stop(`CHROMIUM_PATH leads to no program: ${process.env.CHROMIUM_PATH}`);
    console.log('No Chromium for the browser tests here.');
    const allowed = ways ?? waysToChromium({ isRoot: process.getuid?.() === 0, hasAptGet: hasAptGet() });
    for (const way of allowed) if ((await took(way)) && find() !== null) break;
  }
  const path = find() ?? stop(IN_WORDS);
  const complaint = complaintOf(path);
  if (complaint !== null) stop(`${path} does not run here: ${complaint}\n${IN_WORDS}`);
  return path;
}
