// The scripts, styles and HTML of the pages. The framework renders every page with its head; what wakes a page up is ours:
// each page's body is drawn anew from the very components that the browser gets, and a script of its own brings them to
// life over it. So nothing of the framework goes over the line: a third of all script, for what no page uses (its links
// are plain, its data come from the API).
import { copyFileSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, preprocessCSS, resolveConfig } from 'vite';
import { ROOT } from './sources.mjs';

/** In the address of every file; the framework serves what lies there for good (immutable). */
const AT = '/_next/static/chunks/';
const ENTRY = 'page:';
const DRAWN = 'drawn-pages';

/** What of the framework the pages use, in its place. */
const STAND_INS = {
  'next/dynamic': join(ROOT, 'app', '_page', 'dynamic.tsx'),
  'next/navigation': join(ROOT, 'app', '_page', 'navigation.ts'),
};

/**
 * One file for what every page runs first, one for the database, one for the night and one for the chart; what more than
 * three parts share is one file for all of them. Later ones take what earlier ones have left.
 */
const FILES = [
  {
    name: 'frame',
    test: /app\/_page\/|app\/globals\.css|app\/not-found\.tsx|components\/(night|share)\/(night|open)-page\.tsx/,
    priority: 5,
  },
  { name: 'store', test: /lib\/store\/open-store\.ts/, priority: 4 },
  { name: 'night', test: /components\/night\/night-room\.tsx/, priority: 3 },
  { name: 'chart', test: /components\/night\/picture\/figures\.tsx/, priority: 2 },
  { name: 'shared', minShareCount: 4, priority: 1 },
];

/** The framework's name for the page shown where there is none. */
export const NOT_FOUND = '/_not-found';
/** And for the one sent where the server failed. */
const FAILED = '/_global-error';
/** Both it keeps a second time, each under its status. */
const BY_STATUS = { [NOT_FOUND]: '404.html', [FAILED]: '500.html' };

const UNROUTED = {
  [NOT_FOUND]: join(ROOT, 'app', 'not-found.tsx'),
  [FAILED]: join(ROOT, 'app', '_page', 'failed.tsx'),
};

const fileOf = (route) => UNROUTED[route] ?? join(ROOT, 'app', route, 'page.tsx');
const nameOf = (route) => (route === '/' ? 'index' : route.slice(1));

/** The sources that stand for a page. */
const pageSources = (routes) => ({
  name: 'page sources',
  enforce: 'pre',
  resolveId(id, importer) {
    if (id.startsWith(ENTRY) || id === DRAWN) return `\0${id}`;
    // What stands in for the framework has its place by now.
    if (/^next(\/|$)/.test(id)) throw new Error(`${importer}: nothing stands in for ${id}`);
    return undefined;
  },
  load(id) {
    if (id === `\0${DRAWN}`) {
      const drawn = routes.map((route, index) => `import Page${index} from '${fileOf(route)}';`);
      const list = routes.map((route, index) => `[${JSON.stringify(route)}, Page${index}]`);
      return [
        ...drawn,
        `export { drawPage } from '${join(ROOT, 'app', '_page', 'draw.tsx')}';`,
        `export const pages = [${list}];`,
      ].join('\n');
    }
    if (!id.startsWith(`\0${ENTRY}`)) return undefined;
    return [
      `import '${join(ROOT, 'app', 'globals.css')}';`,
      `import Page from '${fileOf(id.slice(ENTRY.length + 1))}';`,
      `import { wakePage } from '${join(ROOT, 'app', '_page', 'wake.tsx')}';`,
      'wakePage(Page);',
    ].join('\n');
  },
});

const { browserslist } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));

const settings = (routes, plannerFile) => ({
  configFile: false,
  root: ROOT,
  mode: 'production',
  logLevel: 'error',
  publicDir: false,
  base: AT,
  resolve: {
    alias: { '@': ROOT, 'victory-vendor/d3-scale': join(ROOT, '.scripts', 'chart-scales.mjs'), ...STAND_INS },
  },
  define: {
    'process.env.NODE_ENV': '"production"',
    'process.env.PLANNER_FILE': JSON.stringify(plannerFile),
  },
  css: { transformer: 'lightningcss' },
  plugins: [pageSources(routes)],
});

/** Builds what the browser gets; says which files each page needs before it can wake up. */
async function buildForBrowsers(outDir, routes, plannerFile) {
  const { output } = await build({
    ...settings(routes, plannerFile),
    build: {
      outDir,
      assetsDir: '',
      emptyOutDir: true,
      // All of it is smaller than one more answer is long.
      cssCodeSplit: false,
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      target: browserslist.map((engine) => engine.replace(' >= ', '')),
      reportCompressedSize: false,
      rolldownOptions: {
        input: Object.fromEntries(routes.map((route) => [nameOf(route), `${ENTRY}${route}`])),
        output: { codeSplitting: { groups: FILES } },
      },
    },
  });
  const files = new Map(output.map((file) => [file.fileName, file]));
  const neededBy = (name, needed = new Set()) => {
    needed.add(name);
    for (const other of files.get(name).imports) if (!needed.has(other)) neededBy(other, needed);
    return needed;
  };
  const find = (what) => output.find(what).fileName;
  const entryOf = (route) => find(({ isEntry, name }) => isEntry && name === nameOf(route));
  return {
    style: AT + find(({ fileName }) => fileName.endsWith('.css')),
    scriptsOf: (route) => [...neededBy(entryOf(route))].map((name) => AT + name),
    partOf: (name) => AT + find((file) => file.name === name),
  };
}

/** The body of every page, by its address. */
async function drawPages(outDir, routes) {
  await build({
    ...settings(routes, ''),
    build: {
      outDir,
      emptyOutDir: true,
      ssr: true,
      rolldownOptions: {
        input: { [DRAWN]: DRAWN },
        output: { entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' },
      },
    },
  });
  const { drawPage, pages } = await import(pathToFileURL(join(outDir, `${DRAWN}.mjs`)).href);
  const bodies = new Map();
  for (const [route, Page] of pages) bodies.set(route, await drawPage(route, Page));
  return bodies;
}

const FRAMEWORK_SCRIPT = /<script\b[^>]*\ssrc=[^>]*><\/script>/g;
const FRAMEWORK_LINK =
  /<link\b[^>]*\b(?:rel="stylesheet"|rel="preconnect"|as="script"|as="style"|as="font")[^>]*>/g;
const BODY = /<body>[\s\S]*<\/body>/;

/** The night page asks for its scripts itself (lib/planner/start.ts): they wait for what answers first. */
const NIGHT = '/';

function tagsFor(route, scripts) {
  if (route === NIGHT) return [];
  const [own, ...others] = scripts;
  return [
    `<script type="module" src="${own}"></script>`,
    ...others.map((file) => `<link rel="modulepreload" href="${file}"/>`),
  ];
}

/** The framework's page with our body, styles and scripts. */
function withOurs(html, { body, style, tags }) {
  const ours = [`<link rel="stylesheet" href="${style}"/>`, ...tags].join('');
  if (!BODY.test(html) || !html.includes('</head>'))
    throw new Error('a page of the framework looks otherwise');
  return html
    .replace(FRAMEWORK_SCRIPT, '')
    .replace(FRAMEWORK_LINK, '')
    .replace('</head>', () => `${ours}</head>`)
    .replace(BODY, () => `<body>${body}</body>`);
}

/**
 * Takes the framework's scripts and styles out of a build and puts ours in. `output`: the framework's folder; `routes`: of
 * the pages it has rendered.
 */
export async function buildPages({ output, routes: rendered, htmlFileOf, plannerFile }) {
  const routes = [...rendered, NOT_FOUND, FAILED];
  const chunks = join(output, 'static', 'chunks');
  rmSync(join(output, 'static'), { recursive: true, force: true });
  const { style, scriptsOf, partOf } = await buildForBrowsers(chunks, routes, plannerFile);
  const drawn = join(output, 'drawn');
  const bodies = await drawPages(drawn, routes);
  // The framework's page for a failure has styles and a title of its own.
  const frameworks = routes.map((route) =>
    readFileSync(htmlFileOf(route === FAILED ? NOT_FOUND : route), 'utf8'),
  );
  for (const [index, route] of routes.entries()) {
    const ours = { body: bodies.get(route), style, tags: tagsFor(route, scriptsOf(route)) };
    writeFileSync(htmlFileOf(route), withOurs(frameworks[index], ours));
    if (route in BY_STATUS)
      copyFileSync(htmlFileOf(route), join(output, 'server', 'pages', BY_STATUS[route]));
  }
  rmSync(drawn, { recursive: true });
  // What it asks for as soon as it runs is known beforehand.
  return { nightScripts: [...scriptsOf(NIGHT), ...['night', 'store'].map(partOf)] };
}

/** What the names in a file of styles are to the pages: name in the source -> name in the page. */
export async function createClassNames() {
  const config = await resolveConfig(settings([], ''), 'build', 'production', 'production');
  return async (path) => {
    const { modules } = await preprocessCSS(readFileSync(path, 'utf8'), path, config);
    return modules;
  };
}
