// `npm run build`: builds the app, puts our own scripts into its pages, then what can only be known once every page stands:
// the hashes of its inline scripts (for the content security policy) and the worker that keeps all of it for use without a
// network; then the server with its planning threads, and all of it once more as a folder that runs on its own
// (.next/standalone).
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { getManifest } from '@serwist/build';
import { build } from 'esbuild';
import { writeBrotli } from './brotli.mjs';
import { writeCompileHints } from './compile-hints.mjs';
import { buildPages, NOT_FOUND } from './page-scripts.mjs';
import { bundlePageWorker, earlyStart } from './page-worker.mjs';
import { run, stamp } from './prepare.mjs';
import { hashOfSources, ROOT } from './sources.mjs';

const OUTPUT = join(ROOT, '.next');
const INLINE_SCRIPT = /<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g;

const sha256 = (text, encoding) => createHash('sha256').update(text).digest(encoding);

/** Must be among the first 1024 bytes of a page (HTML, "Specifying the document's character encoding"). */
const CHARSET = '<meta charSet="utf-8"/>';

/** The face's plain letters; its accents are asked for where they occur. */
const FACE = /^barlow-semi-condensed-600-[\w-]{8}\.woff2$/;

const PAGES = join(OUTPUT, 'server', 'app');
const htmlFileOf = (route) => join(PAGES, `${route === '/' ? 'index' : route}.html`);
const htmlOf = (route) => readFileSync(htmlFileOf(route), 'utf8');

/** Where the build keeps what lies at an address. */
const fileAt = (address) => join(OUTPUT, address.replace('/_next/', ''));

/** Of every page rendered at build time. */
function renderedRoutes() {
  const { routes } = JSON.parse(readFileSync(join(OUTPUT, 'prerender-manifest.json'), 'utf8'));
  return Object.entries(routes)
    .filter(([route, { dataRoute }]) => dataRoute?.endsWith('.rsc') && !route.startsWith('/_'))
    .map(([route]) => route);
}

/** Only these inline scripts may run on each page. */
function writeScriptHashes(pages) {
  const hashes = pages.map(({ route, html }) => [
    route,
    [...new Set([...html.matchAll(INLINE_SCRIPT)].map(([, code]) => `'sha256-${sha256(code, 'base64')}'`))],
  ]);
  writeFileSync(join(OUTPUT, 'inline-script-hashes.json'), JSON.stringify(Object.fromEntries(hashes)));
}

/** What a kept file holds, for the worker to see whether it still does (components/offline/heal-kept.ts). */
const digestOf = (content) => sha256(content, 'hex').slice(0, 16);

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
  const manifest = digestOf(readFileSync(join(OUTPUT, 'server', 'app', 'manifest.webmanifest.body')));
  const withDigest = (entry, folder, path = entry.url) => ({
    ...entry,
    digest: digestOf(readFileSync(join(folder, path))),
  });
  const files = [
    ...manifestEntries.map((entry) => withDigest(entry, OUTPUT, entry.url.replace('/_next/', '/'))),
    ...open.manifestEntries.map((entry) => withDigest(entry, join(ROOT, 'public'))),
    { url: '/manifest.webmanifest', revision: manifest, digest: manifest },
    ...pages.map(({ route, html }) => ({ url: route, revision: digestOf(html), digest: digestOf(html) })),
  ];
  // The disk's order is no part of what is built.
  return files.sort((a, b) => (a.url < b.url ? -1 : 1));
}

/** The commit that is built, for whoever asks a server what it runs; a folder without history is told by `COMMIT`. */
function commitOf() {
  if (process.env.COMMIT) return process.env.COMMIT;
  try {
    const git = (...args) => execFileSync('git', args, { cwd: ROOT, stdio: ['ignore', 'pipe', 'ignore'] });
    return `${git('rev-parse', 'HEAD')}`.trim();
  } catch {
    return null;
  }
}

function writeBuiltFrom() {
  const buildId = readFileSync(join(OUTPUT, 'BUILD_ID'), 'utf8');
  writeFileSync(join(OUTPUT, 'built-from.json'), JSON.stringify({ buildId, commit: commitOf() }));
}

/** Puts something before all else of a page. */
function beginWith(route, early) {
  const html = htmlOf(route).replace(CHARSET, (tag) => `${tag}${early}`);
  if (!html.includes(early)) throw new Error(`the head of ${route} does not begin as it did`);
  writeFileSync(htmlFileOf(route), html);
}

/**
 * Asks for the face at the head of the pages that are read before their scripts are there: one that came later would move
 * what is read by then. On the night page the script that opens the worker stands before even that.
 */
async function startEarly(plannerFile, nightScripts) {
  const script = await earlyStart(plannerFile, nightScripts);
  const face = readdirSync(join(OUTPUT, 'static', 'chunks')).find((name) => FACE.test(name));
  if (face === undefined) throw new Error('the face is not among the files');
  const preload = `<link rel="preload" as="font" type="font/woff2" href="/_next/static/chunks/${face}" crossorigin="">`;
  beginWith('/', `<script>${script}</script>${preload}`);
  beginWith('/about', preload);
}

/** The server and its threads, whole but for the framework, which finds its own files from where it lies. */
async function bundleServer() {
  rmSync(join(OUTPUT, 'serve'), { recursive: true, force: true });
  await build({
    entryPoints: {
      serve: join(ROOT, 'app', 'api', '_serve', 'serve.ts'),
      thread: join(ROOT, 'app', 'api', '_planning', 'thread.ts'),
    },
    outdir: join(OUTPUT, 'serve'),
    outExtension: { '.js': '.mjs' },
    bundle: true,
    // What only one setting needs is a file of its own, which nothing else loads.
    splitting: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    external: ['next'],
    // Packages written for `require` find it.
    banner: {
      js: "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);",
    },
    logLevel: 'warning',
  });
}

/** Into the folder that runs on its own, what the framework does not know of or leaves to others. */
function completeStandalone() {
  const folder = join(OUTPUT, 'standalone');
  for (const name of [
    'serve',
    'static',
    'brotli',
    'offline-worker.js',
    'inline-script-hashes.json',
    'built-from.json',
  ])
    cpSync(join(OUTPUT, name), join(folder, '.next', name), { recursive: true });
  for (const part of ['app', 'pages'])
    for (const name of readdirSync(join(OUTPUT, 'server', part)).filter((file) => file.endsWith('.html')))
      cpSync(join(OUTPUT, 'server', part, name), join(folder, '.next', 'server', part, name));
  cpSync(join(ROOT, 'public'), join(folder, 'public'), { recursive: true });
  // Our server starts this folder.
  rmSync(join(folder, 'server.js'), { force: true });
}

for (const name of ['standalone', 'brotli']) rmSync(join(OUTPUT, name), { recursive: true, force: true });
const sources = hashOfSources();
await run('npx', ['--no-install', 'next', 'build'], { NEXT_TELEMETRY_DISABLED: '1' });
const plannerFile = `/_next/static/${readFileSync(join(OUTPUT, 'BUILD_ID'), 'utf8')}/planner.js`;
const routes = renderedRoutes();
const { nightScripts } = await buildPages({ output: OUTPUT, routes, htmlFileOf, plannerFile });
await bundlePageWorker(fileAt(plannerFile));
await startEarly(plannerFile, nightScripts);
writeCompileHints(nightScripts.map(fileAt));
const pages = routes.map((route) => ({ route, html: htmlOf(route) }));
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
const compressed = writeBrotli(OUTPUT, join(ROOT, 'public'), pages);
writeBuiltFrom();
await bundleServer();
completeStandalone();
stamp('build', sources);
console.log(
  `${pages.length} pages, ${files.length} files kept for use without a network, ${compressed} compressed.`,
);
