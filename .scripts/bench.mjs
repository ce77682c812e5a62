// `npm run bench`: every benchmark, one after the other, each printing ratios against a named peer in the same run.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { buildIfNeeded, installIfNeeded, ROOT, run } from './prepare.mjs';

installIfNeeded();
buildIfNeeded();
const wanted = process.argv.slice(2);
const folder = join(ROOT, 'tests', 'bench');
for (const file of readdirSync(folder)
  .filter((name) => name.endsWith('.bench.ts'))
  .sort()) {
  if (wanted.length > 0 && !wanted.some((name) => file.includes(name))) continue;
  console.log(`\n== ${file}`);
  run('npx', ['--no-install', 'tsx', join(folder, file)]);
}
