import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from '@/tests/support/source-tree';

type Locked = {
  readonly name?: string;
  readonly version?: string;
  readonly integrity?: string;
  readonly resolved?: string;
  readonly link?: boolean;
};
type Manifest = {
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
};

const readJson = (name: string) => JSON.parse(readFileSync(join(ROOT, name), 'utf8'));
const manifest: Manifest = readJson('package.json');
const locked: Readonly<Record<string, Locked>> = readJson('package-lock.json').packages;
const installed = Object.entries(locked).filter(([path]) => path !== '');

describe('the packages this is built from', () => {
  it('are named by exact versions, which the lock file repeats', () => {
    for (const [name, version] of Object.entries({ ...manifest.dependencies, ...manifest.devDependencies })) {
      expect(version, name).toMatch(/^\d+\.\d+\.\d+$/);
      expect(locked[`node_modules/${name}`]?.version, name).toBe(version);
    }
  });

  it('are all locked with a checksum of 512 bits, from the one registry', () => {
    expect(installed.length).toBeGreaterThan(200);
    expect(
      installed.filter(([, { integrity }]) => !integrity?.startsWith('sha512-')).map(([path]) => path),
    ).toEqual([]);
    // Without an address of its own a package comes from the registry npm is set to.
    const elsewhere = installed.filter(
      ([, { resolved, link }]) =>
        link === true || (resolved !== undefined && !resolved.startsWith('https://registry.npmjs.org/')),
    );
    expect(elsewhere.map(([path]) => path)).toEqual([]);
  });

  it('hold no scaler of pictures, which the framework would install and nothing here uses', () => {
    expect(installed.map(([path]) => path).filter((path) => /@img\//.test(path))).toEqual([]);
    // In its place stands a package that is there anyway and does nothing.
    const stand = installed.filter(([path]) => path.endsWith('node_modules/sharp'));
    expect(stand.map(([, { name }]) => name)).toEqual(stand.map(() => 'server-only'));
  });

  it('run no script of theirs while they are installed', () => {
    expect(readFileSync(join(ROOT, '.npmrc'), 'utf8').split('\n')).toContain('ignore-scripts=true');
  });
});
