import { describe, expect, it } from 'vitest';
import { IN_WORDS, waysToChromium } from '@/.scripts/get-chromium.mjs';

const commands = (machine: Parameters<typeof waysToChromium>[0]) =>
  waysToChromium(machine).map(({ steps }) => steps.map(([command, args]) => [command, ...args].join(' ')));

describe('getting a Chromium', () => {
  it('goes by the package manager where it may be used, with a font, and by a download otherwise', () => {
    const install = 'apt-get install -q -y --no-install-recommends';
    expect(commands({ isRoot: true, hasAptGet: true })).toEqual([
      ['apt-get update -q', `${install} chromium-headless-shell fonts-liberation`],
      ['apt-get update -q', `${install} chromium fonts-liberation`],
      ['npx --no-install playwright install --with-deps chromium-headless-shell'],
    ]);
    const download = [['npx --no-install playwright install chromium-headless-shell']];
    expect(commands({ isRoot: false, hasAptGet: true })).toEqual(download);
    expect(commands({ isRoot: true, hasAptGet: false })).toEqual(download);
  });

  it('says what it does before each way, and what to do where none leads there', () => {
    for (const { says } of waysToChromium({ isRoot: true, hasAptGet: true }))
      expect(says).toMatch(/ing .*\.\.\.$/);
    expect(IN_WORDS).toContain('apt-get install chromium-headless-shell');
    expect(IN_WORDS).toContain('CHROMIUM_PATH');
  });
});
