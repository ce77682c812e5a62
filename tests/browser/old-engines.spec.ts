import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from '@playwright/test';
import { transformSync } from 'esbuild';
import { test } from './test';

const BUILD = join(process.cwd(), '.next');

/** Scripts that a browser gets. */
function scripts(): readonly { readonly name: string; readonly code: string }[] {
  return readdirSync(join(BUILD, 'static'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.js'))
    .map((name) => ({ name, code: readFileSync(join(BUILD, 'static', name), 'utf8') }));
}

const { browserslist } = JSON.parse(readFileSync('package.json', 'utf8'));
const OLDEST = browserslist.map((engine: string) => engine.replace(' >= ', ''));
/** Whole names that no other library uses for something else. */
const TOO_NEW =
  /\.(toSorted|toReversed|toSpliced|toWellFormed|isWellFormed)\(|Array\.fromAsync|withResolvers\(/;

test('the scripts as they are sent can be read by the oldest engines that are promised', () => {
  const all = scripts();
  expect(all.length).toBeGreaterThan(20);
  const faults = all.flatMap(({ name, code }) => {
    const written = (target: string | readonly string[]) =>
      transformSync(code, {
        target: [target].flat(),
        // The tool's table takes all properties of letters for as new as the newest of them.
        supported: { 'regexp-unicode-property-escapes': true },
      }).code;
    const call = TOO_NEW.exec(code)?.[0];
    return [
      ...(written(OLDEST) === written('esnext') ? [] : [`${name}: newer syntax`]),
      ...(call === undefined ? [] : [`${name}: ${call}`]),
    ];
  });
  expect(faults).toEqual([]);
});
