// `npm run build`: builds the app, then what can only be known once every page has been rendered: the hashes of its
// inline scripts (for the content security policy) and the worker that keeps all of it for use without a network.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { getManifest } from '@serwist/build';
import { build } from 'esbuild';
import { ROOT, run } from './prepare.mjs';

const OUTPUT = join(ROOT, '.next');
const INLINE_SCRIPT = /<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g;

const sha256 = (text, encoding) => createHash('sha256').update(text).digest(encoding);

/** Next's name for the page shown where there is none. */
const NOT_FOUND = '/_not-found';

const htmlOf = (route) =>
  readFileSync(join(OUTPUT, 'server', 'app', `${route === '/' ? 'index' : route}.html`), 'utf8');

/** Route -> HTML of every page rendered at build time. */
function renderedPages() {
  const { routes } = JSON.parse(readFileSync(join(OUTPUT, 'prerender-manifest.json'), 'utf8'));
  return Object.entries(routes)
    .filter(([route, { dataRoute }]) => dataRoute?.endsWith('.rsc') && !route.startsWith('/_'))
    .map(([route]) => ({ route, html: htmlOf(route) }));
}

/** Only these inline scripts may run on each page. */
function writeScriptHashes(pages) {
  const hashes = pages.map(({ route, html }) => [
    route,
    [...new Set([...html.matchAll(INLINE_SCRIPT)].map(([, code]) => `'sha256-${sha256(code, 'base64')}'`))],
  ]);
  writeFileSync(join(OUTPUT, 'inline-script-hashes.json'), JSON.stringify(Object.fromEntries(hashes)));
}

async function filesToKeep(pages) {
  const { manifestEntries } = await getManifest({
    globDirectory: OUTPUT,
    globPatterns: ['static/**/*.{js,css,woff2,svg,png,ico,webmanifest}'],
    modifyURLPrefix: { 'static/': '/_next/static/' },
    dontCacheBustURLsMatching: /^static\//,
    maximumFileSizeToCacheInBytes: 4_000_000,
  });
  const open = await getManifest({
    globDirectory: join(ROOT, 'public'),
    globPatterns: ['**/*.{svg,png,ico,webmanifest}'],
    modifyURLPrefix: { '': '/' },
  });
  return [
    ...manifestEntries,
    ...open.manifestEntries,
    {
      url: '/manifest.webmanifest',
      revision: sha256(readFileSync(join(OUTPUT, 'server', 'app', 'manifest.webmanifest.body')), 'hex').slice(
        0,
        16,
      ),
    },
    ...pages.map(({ route, html }) => ({ url: route, revision: sha256(html, 'hex').slice(0, 16) })),
  ];
}

await run('npx', ['--no-install', 'next', 'build']);
const pages = renderedPages();
writeScriptHashes([...pages, { route: NOT_FOUND, html: htmlOf(NOT_FOUND) }]);
const files = await filesToKeep(pages);
await build({
  entryPoints: [join(ROOT, 'components', 'offline', 'worker.ts')],
  outfile: join(OUTPUT, 'offline-worker.js'),
  bundle: true,
  minify: true,
  format: 'iife',
  target: 'es2022',
  define: { 'self.HEAVY_AIR_FILES': JSON.stringify(files), 'process.env.NODE_ENV': '"production"' },
  logLevel: 'warning',
});
console.log(`${pages.length} pages, ${files.length} files kept for use without a network.`);
