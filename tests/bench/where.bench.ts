import { join, relative } from 'node:path';
import { gzipSync } from 'node:zlib';
import { build, type Metafile } from 'esbuild';
import { ROOT } from '@/tests/support/source-tree';
import { tell } from './outcome';

/** What the first call and the chart are made of, by package and by room: where a byte saved would have to come from. */
const PARTS = {
  'the first call': [
    'components/night/night-page.tsx',
    'components/night/night-room.tsx',
    'lib/store/open-store.ts',
  ],
  'the chart': ['components/night/picture/figures.tsx'],
};
/** Smaller ones are told together. */
const LEAST_SHARE = 0.01;

/** react-dom of a path in node_modules, else the room: lib/plan, components/night. */
function ownerOf(path: string): string {
  const inPackage = path.split('node_modules/').at(-1) ?? path;
  const parts = inPackage.split('/');
  const words = inPackage === path || inPackage.startsWith('@') ? 2 : 1;
  return parts.slice(0, words).join('/');
}

/** The files that come with the entries, without those that are asked for later. */
function comeAtOnce(outputs: Metafile['outputs'], entryPoints: readonly string[]): readonly string[] {
  const found = new Set(
    Object.keys(outputs).filter((path) => entryPoints.includes(outputs[path]?.entryPoint ?? '')),
  );
  for (const path of found)
    for (const { path: next, kind } of outputs[path]?.imports ?? [])
      if (kind === 'import-statement' && next in outputs) found.add(next);
  return [...found];
}

async function weigh(entryPoints: string[]) {
  const { outputFiles, metafile } = await build({
    entryPoints,
    absWorkingDir: ROOT,
    outdir: join(ROOT, '.cache', 'where'),
    bundle: true,
    splitting: true,
    minify: true,
    write: false,
    metafile: true,
    format: 'esm',
    target: 'es2022',
    jsx: 'automatic',
    loader: { '.css': 'empty' },
    alias: { 'victory-vendor/d3-scale': join(ROOT, '.scripts', 'chart-scales.mjs') },
    define: { 'process.env.NODE_ENV': '"production"' },
    external: ['react', 'react-dom', 'next/*'],
    logLevel: 'error',
  });
  const owners = new Map<string, number>();
  let [bytes, zipped] = [0, 0];
  for (const path of comeAtOnce(metafile.outputs, entryPoints)) {
    const script =
      outputFiles.find((file) => relative(ROOT, file.path) === path)?.contents ?? new Uint8Array();
    bytes += script.length;
    zipped += gzipSync(script, { level: 9 }).length;
    for (const [input, { bytesInOutput }] of Object.entries(metafile.outputs[path]?.inputs ?? {}))
      owners.set(ownerOf(input), (owners.get(ownerOf(input)) ?? 0) + bytesInOutput);
  }
  return { bytes, zipped, owners };
}

for (const [what, entries] of Object.entries(PARTS)) {
  const { bytes, zipped, owners } = await weigh([...entries]);
  const kb = (share: number) => `${((share * zipped) / 1000).toFixed(1)} kB`;
  tell({
    what: `script of ${what}, minified and gzipped, without framework`,
    ours: kb(1),
    peer: 'bundled whole by esbuild',
    ratio: `${(bytes / 1000).toFixed(0)} kB plain`,
    wanted: null,
  });
  const shares = [...owners].map(([owner, size]) => ({ owner, share: size / bytes }));
  for (const { owner, share } of shares
    .filter(({ share }) => share >= LEAST_SHARE)
    .sort((a, b) => b.share - a.share))
    tell({
      what: `   ${owner}`,
      ours: kb(share),
      peer: '',
      ratio: `${(share * 100).toFixed(0)} %`,
      wanted: null,
    });
}
