// Bundles the page's worker (components/night/early/worker.tsx) into one plain file: engines of the stated target know no
// modules in workers, and the framework would split it over four requests. What it draws must look as the page does, so
// the class names of its styles are those of the pages.
import { join } from 'node:path';
import { build } from 'esbuild';
import { createClassNames } from './page-scripts.mjs';
import { ROOT } from './sources.mjs';

/** Shown when somebody asks for them, which nobody can before the page is awake. */
const DIALOGS = /\/(?:fit|schedule)-dialog$/;

const asThePage = (classNamesOf) => ({
  name: 'as the page',
  setup(bundle) {
    bundle.onLoad({ filter: /\.module\.css$/ }, async ({ path }) => ({
      contents: JSON.stringify(await classNamesOf(path)),
      loader: 'json',
    }));
    bundle.onResolve({ filter: DIALOGS }, ({ path }) => ({ path, namespace: 'dialog' }));
    bundle.onLoad({ filter: /.*/, namespace: 'dialog' }, () => ({
      contents: 'export const FitDialog = null; export const ScheduleDialog = null;',
    }));
  },
});

/**
 * The script that opens the worker and then the page, as text for its head. `file`: the worker's address, `pageFiles`:
 * those of the page's scripts, the one first that wakes it up.
 */
export async function earlyStart(file, pageFiles) {
  const { outputFiles } = await build({
    entryPoints: [join(ROOT, 'lib', 'planner', 'start.ts')],
    write: false,
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2018',
    define: {
      'process.env.PLANNER_FILE': JSON.stringify(file),
      'process.env.PAGE_FILES': JSON.stringify(JSON.stringify(pageFiles)),
    },
    logLevel: 'warning',
  });
  return outputFiles[0].text.trim();
}

export async function bundlePageWorker(outfile) {
  const react = join(ROOT, '.scripts', 'plain-jsx.mjs');
  await build({
    entryPoints: [join(ROOT, 'components', 'night', 'early', 'worker.tsx')],
    outfile,
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    jsx: 'automatic',
    alias: { react, 'react/jsx-runtime': react },
    plugins: [asThePage(await createClassNames())],
    define: { 'process.env.NODE_ENV': '"production"' },
    logLevel: 'warning',
  });
}
