// `npm run bench`: every benchmark, one after the other, and at the end one table of them all.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { getChromium } from './get-chromium.mjs';
import { buildIfNeeded, installIfNeeded } from './prepare.mjs';
import { runGroup } from './process-group.mjs';
import { ROOT } from './sources.mjs';

const OUTCOMES = join(ROOT, '.cache', 'bench-outcomes.jsonl');
const HEADINGS = ['what', 'ours', 'peer in the same run', 'ratio', 'wanted', ''];

function cellsOf({ what, ours, peer, ratio, wanted }) {
  return [what, ours, peer, ratio, wanted?.goal ?? '', wanted ? (wanted.met ? 'met' : 'MISSED') : ''];
}

function printTable(rows) {
  const widths = HEADINGS.map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  for (const row of rows)
    console.log(
      row
        .map((cell, column) => cell.padEnd(widths[column]))
        .join('  ')
        .trimEnd(),
    );
}

/**
 * Makes one file of a benchmark and what it measures, as the build does of the server and its planning threads. What runs
 * TypeScript as it stands names every inner function each time it is made, which took a seventh of a plan's time.
 */
async function bundled(file) {
  const { build } = await import('esbuild');
  // As deep as its source, which finds other files from where it lies.
  const outfile = join(ROOT, '.cache', 'bench', file.replace(/\.ts$/, '.mjs'));
  await build({
    entryPoints: [join(ROOT, 'tests', 'bench', file)],
    outfile,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20',
    jsx: 'automatic',
    logLevel: 'error',
  });
  return outfile;
}

await installIfNeeded();
const chromium = await getChromium();
await buildIfNeeded();
mkdirSync(join(ROOT, '.cache'), { recursive: true });
rmSync(OUTCOMES, { force: true });
const wanted = process.argv.slice(2);
const folder = join(ROOT, 'tests', 'bench');
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.bench.ts'))
  .filter((name) => wanted.length === 0 || wanted.some((part) => name.includes(part)))
  .sort();
const failed = [];
for (const file of files) {
  console.log(`\n== ${file}`);
  const status = await runGroup(process.execPath, [await bundled(file)], {
    cwd: ROOT,
    env: { ...process.env, BENCH_OUTCOMES: OUTCOMES, CHROMIUM_PATH: chromium },
  });
  if (status !== 0) failed.push(file);
}
const outcomes = existsSync(OUTCOMES)
  ? readFileSync(OUTCOMES, 'utf8')
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line))
  : [];
console.log('');
printTable([HEADINGS, ...outcomes.map(cellsOf)]);
if (failed.length > 0) {
  console.error(`\nA goal was missed or a benchmark broke in: ${failed.join(', ')}`);
  process.exit(1);
}
