import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from '@/tests/support/source-tree';

type Locked = { readonly license?: string; readonly dev?: boolean };

/** Anyone may use, change and pass on what is under these, with our own MIT beside them. SPDX names. */
const OPEN = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD', 'CC0-1.0'];

/** Each with the reason why it may be here all the same. */
const EXCEPTIONS: readonly { readonly name: RegExp; readonly licence: string; readonly because: string }[] = [
  {
    name: /^web-push$/,
    licence: 'MPL-2.0',
    because:
      'its terms cover its own files, which run on the server as they come and are sent to nobody; the source is in the package',
  },
  {
    name: /^caniuse-lite$/,
    licence: 'CC-BY-4.0',
    because: 'data for the build, from which nothing is passed on',
  },
];

const readJson = (path: string) => JSON.parse(readFileSync(join(ROOT, path), 'utf8'));
const locked: Readonly<Record<string, Locked>> = readJson('package-lock.json').packages;

/** What runs or is installed with the app, by its path in node_modules. */
const atRuntime = Object.entries(locked).filter(([path, { dev }]) => path !== '' && dev !== true);

const nameOf = (path: string): string =>
  path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);

/** The licence a package states; where it states none, what the text beside it is. */
function licenceOf(path: string, { license }: Locked): string {
  if (license !== undefined) return license;
  const folder = join(ROOT, path);
  const file = existsSync(folder) ? readdirSync(folder).find((each) => /^licen[cs]e/i.test(each)) : undefined;
  const text = file === undefined ? '' : readFileSync(join(folder, file), 'utf8').replace(/\s+/g, ' ');
  return LICENCE_TEXTS.find(([, pattern]) => pattern.test(text))?.[0] ?? 'none stated';
}

const BSD_START =
  'Redistribution and use in source and binary forms, with or without modification, are permitted';
const LICENCE_TEXTS: readonly (readonly [string, RegExp])[] = [
  ['BSD-3-Clause', new RegExp(`${BSD_START}.*Neither the name`)],
  ['BSD-2-Clause', new RegExp(BSD_START)],
  ['MIT', /Permission is hereby granted, free of charge/],
  ['ISC', /Permission to use, copy, modify, and\/or distribute this software/],
];

function allowed(name: string, licence: string): boolean {
  return licence
    .replace(/[()]/g, '')
    .split(/ AND /)
    .every((part) =>
      part
        .split(/ OR /)
        .some(
          (each) =>
            OPEN.includes(each) ||
            EXCEPTIONS.some((exception) => exception.name.test(name) && exception.licence === each),
        ),
    );
}

describe('licences', () => {
  it('of all packages that go with the app let anyone use and pass them on', () => {
    expect(atRuntime.length).toBeGreaterThan(50);
    const wrong = atRuntime
      .map(([path, entry]) => ({ name: nameOf(path), licence: licenceOf(path, entry) }))
      .filter(({ name, licence }) => !allowed(name, licence))
      .map(({ name, licence }) => `${name}: ${licence}`);
    expect(wrong).toEqual([]);
  });

  it('have no exception that nothing needs', () => {
    const idle = EXCEPTIONS.filter(
      ({ name, licence }) =>
        !atRuntime.some(
          ([path, entry]) => name.test(nameOf(path)) && licenceOf(path, entry).includes(licence),
        ),
    );
    expect(idle).toEqual([]);
  });

  it.each([
    ['GPL-3.0-only', false],
    ['MIT AND GPL-3.0-only', false],
    ['(MIT OR GPL-3.0-only)', true],
    ['none stated', false],
  ])('of a made-up package, %s: %s', (licence, may) => {
    expect(allowed('made-up', licence)).toBe(may);
  });

  it('of our own is MIT, in the text and in package.json', () => {
    expect(readJson('package.json').license).toBe('MIT');
    expect(readFileSync(join(ROOT, 'LICENSE'), 'utf8')).toMatch(
      /^MIT License\s+Copyright \(c\) \d{4} the Heavy Air authors\s/,
    );
  });
});
