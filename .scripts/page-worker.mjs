// Bundles the page's worker (components/night/early/worker.tsx) into one plain file: engines of the stated target know no
// modules in workers, and the framework would split it over four requests. What it draws must look as the page does, so
// the class names of its styles are taken from the scripts the framework has built.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { ROOT } from './sources.mjs';

const CLASS_NAMES = /\.v\((\{(?:"?[\w-]+"?:"[\w -]+",?)+\})\)/g;
const QUOTED = /([{,])([\w-]+):/g;
/** Shown when somebody asks for them, which nobody can before the page is awake. */
const DIALOGS = /\/(?:fit|schedule)-dialog$/;

/** What every module of styles is to the page: for each, name in the source -> name in the page. */
function builtClassNames(chunks) {
  const scripts = readdirSync(chunks).filter((name) => name.endsWith('.js'));
  const found = scripts.flatMap((name) => [
    ...readFileSync(join(chunks, name), 'utf8').matchAll(CLASS_NAMES),
  ]);
  return [...new Set(found.map(([, names]) => names.replace(QUOTED, '$1"$2":')))].map((json) =>
    JSON.parse(json),
  );
}

/** The names a file of styles gives, found again among those of the page. */
function classNamesOf(path, built) {
  const source = readFileSync(path, 'utf8').replace(/\/\*[\s\S]*?\*\//g, '');
  const own = new Set([...source.matchAll(/\.([a-z][\w-]*)/gi)].map(([, name]) => name));
  const same = built.filter((names) => {
    const keys = Object.keys(names);
    return keys.length === own.size && keys.every((key) => own.has(key));
  });
  if (same.length !== 1)
    throw new Error(`${path}: ${same.length} modules of styles in the page have its names`);
  return same[0];
}

const asThePage = (built) => ({
  name: 'as the page',
  setup(bundle) {
    bundle.onLoad({ filter: /\.module\.css$/ }, ({ path }) => ({
      contents: JSON.stringify(classNamesOf(path, built)),
      loader: 'json',
    }));
    bundle.onResolve({ filter: DIALOGS }, ({ path }) => ({ path, namespace: 'dialog' }));
    bundle.onLoad({ filter: /.*/, namespace: 'dialog' }, () => ({
      contents: 'export const FitDialog = null; export const ScheduleDialog = null;',
    }));
  },
});

/** The script that opens the worker, as text for the head of the page; `file` is the worker's address. */
export async function earlyStart(file) {
  const { outputFiles } = await build({
    entryPoints: [join(ROOT, 'lib', 'planner', 'start.ts')],
    write: false,
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2018',
    define: { 'process.env.PLANNER_FILE': JSON.stringify(file) },
    logLevel: 'warning',
  });
  return outputFiles[0].text.trim();
}

/** `chunks`: the framework's folder of scripts. */
export function bundlePageWorker({ chunks, outfile }) {
  const react = join(ROOT, '.scripts', 'plain-jsx.mjs');
  return build({
    entryPoints: [join(ROOT, 'components', 'night', 'early', 'worker.tsx')],
    outfile,
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    jsx: 'automatic',
    alias: { react, 'react/jsx-runtime': react },
    plugins: [asThePage(builtClassNames(chunks))],
    define: { 'process.env.NODE_ENV': '"production"' },
    logLevel: 'warning',
  });
}
