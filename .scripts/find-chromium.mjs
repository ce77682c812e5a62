// Where the Chromium of tests, benchmarks and pictures is: one answer for all of them.
import { existsSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

// The shell without windows first: the same engine for half the processor time.
export const SYSTEM_PLACES = [
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];
const SHELL_NAMES = /^(chrome-headless-shell|headless_shell)(\.exe)?$/;

/**
 * Playwright's own download, by the path it would have for a whole Chromium: beside that folder lies the one of the
 * shell without windows, of the same revision.
 */
export function playwrightPlaces(wholePath, namesIn) {
  const [, folder, revision] = /^(.*)[/\\]chromium-(\d+)[/\\]/.exec(wholePath) ?? [];
  if (folder === undefined) return [wholePath];
  const shells = join(folder, `chromium_headless_shell-${revision}`);
  const found = namesIn(shells).flatMap((inner) =>
    namesIn(join(shells, inner))
      .filter((name) => SHELL_NAMES.test(name))
      .map((name) => join(shells, inner, name)),
  );
  return [...found, wholePath];
}

/** The first that is there. Where `CHROMIUM_PATH` is set, that one or none: nobody wants another than the one they named. */
export function findChromium({ env, exists, playwrights, places = SYSTEM_PLACES }) {
  if (env.CHROMIUM_PATH) return exists(env.CHROMIUM_PATH) ? env.CHROMIUM_PATH : null;
  return places.find(exists) ?? playwrights().find(exists) ?? null;
}

function namesIn(folder) {
  return existsSync(folder) ? readdirSync(folder) : [];
}

function playwrightsHere() {
  const { chromium } = createRequire(import.meta.url)('@playwright/test');
  return playwrightPlaces(chromium.executablePath(), namesIn);
}

/** The Chromium of this machine, or null. */
export function chromiumHere() {
  return findChromium({ env: process.env, exists: existsSync, playwrights: playwrightsHere });
}
