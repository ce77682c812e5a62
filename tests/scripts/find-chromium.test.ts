import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findChromium, playwrightPlaces, SYSTEM_PLACES } from '@/.scripts/find-chromium.mjs';

const OWN = '/cache/chromium_headless_shell-7/linux/chrome-headless-shell';

/** A machine that has these programs. */
function machine(programs: readonly string[], env: Readonly<Record<string, string>> = {}) {
  return { env, exists: (path: string) => programs.includes(path), playwrights: () => [OWN] };
}

describe('where Chromium is', () => {
  it('is where CHROMIUM_PATH says, before all other places', () => {
    const env = { CHROMIUM_PATH: '/opt/mine' };
    expect(findChromium(machine(['/opt/mine', ...SYSTEM_PLACES, OWN], env))).toBe('/opt/mine');
  });

  it('is nowhere where CHROMIUM_PATH leads to nothing, so that the mistake is told', () => {
    expect(findChromium(machine([...SYSTEM_PLACES, OWN], { CHROMIUM_PATH: '/opt/gone' }))).toBeNull();
  });

  it('is the shell without windows before a whole browser, and the system’s before Playwright’s', () => {
    expect(findChromium(machine([OWN, ...SYSTEM_PLACES.toReversed()]))).toBe(
      '/usr/bin/chromium-headless-shell',
    );
    expect(findChromium(machine([OWN, '/usr/bin/chromium']))).toBe('/usr/bin/chromium');
    expect(findChromium(machine([OWN]))).toBe(OWN);
    expect(findChromium(machine([]))).toBeNull();
  });

  it('asks Playwright, which takes a while to load, only where the system has none', () => {
    const playwrights = () => {
      throw new Error('asked');
    };
    expect(findChromium({ ...machine(['/usr/bin/chromium']), playwrights })).toBe('/usr/bin/chromium');
  });

  it('takes an empty CHROMIUM_PATH for none', () => {
    expect(findChromium(machine(['/usr/bin/chromium'], { CHROMIUM_PATH: '' }))).toBe('/usr/bin/chromium');
  });
});

describe('Playwright’s own download', () => {
  /** Folders with what is in them. */
  const disk =
    (folders: Readonly<Record<string, readonly string[]>>) =>
    (folder: string): readonly string[] =>
      folders[folder] ?? [];

  it('is the shell of the same revision, then the whole browser', () => {
    const shells = join('/cache', 'chromium_headless_shell-1255');
    const inner = join(shells, 'chrome-headless-shell-linux64');
    const whole = '/cache/chromium-1255/chrome-linux64/chrome';
    const namesIn = disk({
      [shells]: ['INSTALLATION_COMPLETE', 'chrome-headless-shell-linux64'],
      [inner]: ['LICENSE', 'chrome-headless-shell', 'chrome-headless-shell.pak'],
    });
    expect(playwrightPlaces(whole, namesIn)).toEqual([join(inner, 'chrome-headless-shell'), whole]);
  });

  it('is found in the deeper folders of another system', () => {
    const whole = '/cache/chromium-9/chrome-mac/Chromium.app/Contents/MacOS/Chromium';
    const shells = join('/cache', 'chromium_headless_shell-9');
    const namesIn = disk({ [shells]: ['mac'], [join(shells, 'mac')]: ['headless_shell'] });
    expect(playwrightPlaces(whole, namesIn)).toEqual([join(shells, 'mac', 'headless_shell'), whole]);
  });

  it('is the whole browser alone where there is no shell, or the path is of no known form', () => {
    expect(playwrightPlaces('/cache/chromium-9/x/chrome', disk({}))).toEqual(['/cache/chromium-9/x/chrome']);
    expect(playwrightPlaces('/elsewhere/chrome', disk({}))).toEqual(['/elsewhere/chrome']);
  });
});
