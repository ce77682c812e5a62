// `npm run image`: walks the steps of .deploy/Containerfile where no container engine is at hand. Builds the sources once
// more in another folder, shows that it is the same build, serves the folder that runs on its own as a user who may write
// nothing, and opens every page without a network after one visit shared between two servers. After `npm test`.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { createServer, request } from 'node:http';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { freePort } from './free-port.mjs';
import { getChromium } from './get-chromium.mjs';
import { buildIfNeeded, installIfNeeded } from './prepare.mjs';
import { startGroup } from './process-group.mjs';
import { ROOT } from './sources.mjs';

/** What a build draws by lot and shows to nobody: keys of a preview and of server actions, neither of which is used; and notes about the building itself. */
const DRAWN =
  /^server\/(server-reference-manifest\.(js|json)|preview-props\.json)$|^prerender-manifest\.json$|(^|\/)built-from\.json$/;
/** Written by the framework with the folder it was built in. */
const PLACED = /^required-server-files\.(js|json)$|\.nft\.json$/;
const READY_MS = 60_000;

const say = (what) => console.log(`-- ${what}`);
const folder = mkdtempSync(join(tmpdir(), 'image-'));
// Whoever serves it is nobody's owner here.
chmodSync(folder, 0o755);
process.once('exit', () => rmSync(folder, { recursive: true, force: true }));

function filesBelow(path) {
  return readdirSync(path, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(path, join(entry.parentPath, entry.name)))
    .sort();
}

const hashOfFile = (path) => createHash('sha256').update(readFileSync(path)).digest('hex');

/** The sources alone, as a checkout has them, with the packages of this one. */
function copySources(to) {
  const listed = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
    cwd: ROOT,
  });
  const files = `${listed}`.split('\0').filter((file) => file !== '' && existsSync(join(ROOT, file)));
  for (const file of files) {
    mkdirSync(join(to, dirname(file)), { recursive: true });
    cpSync(join(ROOT, file), join(to, file));
  }
  // `npm ci` in a fresh checkout is what `npm test` begins with.
  execFileSync('cp', ['-r', join(ROOT, 'node_modules'), join(to, 'node_modules')]);
}

/** Every file of two builds that differs or is missing in one. */
function differences(a, b) {
  const [first, second] = [filesBelow(a), filesBelow(b)];
  const both = first.filter((file) => second.includes(file));
  return {
    files: both.length,
    differing: [
      ...first.filter((file) => !second.includes(file)),
      ...second.filter((file) => !first.includes(file)),
      ...both.filter((file) => hashOfFile(join(a, file)) !== hashOfFile(join(b, file))),
    ],
  };
}

async function ready(port) {
  const until = Date.now() + READY_MS;
  for (;;) {
    const answer = await fetch(`http://127.0.0.1:${port}/api/ready`).catch(() => null);
    if (answer?.ok) return answer.json();
    if (Date.now() > until) throw new Error(`nothing is ready at port ${port}`);
    await new Promise((done) => setTimeout(done, 50));
  }
}

/** Starts the server of a folder with nothing of this process's environment. */
async function serve(at, options = {}) {
  const port = await freePort();
  const group = startGroup(process.execPath, [join(at, '.next', 'serve', 'serve.mjs')], {
    cwd: '/',
    env: { PATH: process.env.PATH, PORT: String(port), HOST: '127.0.0.1', NODE_ENV: 'production' },
    stdio: ['ignore', 'ignore', 'inherit'],
    ...options,
  });
  return { port, group, told: await ready(port) };
}

/** One after the other gets a request, as two servers behind a proxy do. */
function roundRobin(ports) {
  let turn = 0;
  const asked = ports.map(() => 0);
  const server = createServer((incoming, outgoing) => {
    turn += 1;
    const which = turn % ports.length;
    asked[which] += 1;
    const { url, method, headers } = incoming;
    const forward = request(
      { host: '127.0.0.1', port: ports[which], path: url, method, headers },
      (answer) => {
        outgoing.writeHead(answer.statusCode, answer.rawHeaders);
        answer.pipe(outgoing);
      },
    );
    forward.on('error', () => outgoing.destroy());
    incoming.pipe(forward);
  });
  return new Promise((resolve) => {
    server.listen(0, '127.0.0.1', () => resolve({ server, asked, port: server.address().port }));
  });
}

/** One visit through both servers, then every page without a network. */
async function openEverythingOffline(base, pages) {
  const { chromium } = await import('@playwright/test');
  const browser = await chromium.launch({
    executablePath: await getChromium(),
    args: ['--no-sandbox', '--disable-gpu'],
  });
  try {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.goto(base);
    await page.evaluate(async () => {
      const { active } = await navigator.serviceWorker.ready;
      if (active?.state !== 'activated')
        await new Promise((done) => active?.addEventListener('statechange', done));
    });
    await context.setOffline(true);
    for (const path of pages) {
      await page.goto(`${base}${path}`);
      await page.locator('h1').first().waitFor();
    }
  } finally {
    await browser.close();
  }
}

await installIfNeeded();
await buildIfNeeded();
const began = Date.now();
const built = join(folder, 'build');
mkdirSync(built);
copySources(built);
const building = startGroup('npm', ['run', '--silent', 'build'], {
  cwd: built,
  env: { ...process.env, COMMIT: 'b'.repeat(40), NEXT_TELEMETRY_DISABLED: '1' },
  stdio: ['ignore', 'ignore', 'inherit'],
});
assert.equal(await building.ended, 0, 'the second build failed');
say(`built a second time in ${((Date.now() - began) / 1000).toFixed(0)} s, in another folder`);

const [one, two] = [ROOT, built].map((root) => join(root, '.next'));
for (const part of ['static', 'brotli', 'serve', join('server', 'app')]) {
  const { files, differing } = differences(join(one, part), join(two, part));
  assert.deepEqual(
    differing.filter((file) => !PLACED.test(file)),
    [],
    `${part} differs between two builds`,
  );
  say(`${part}: ${files} files, the same twice`);
}
for (const file of ['BUILD_ID', 'offline-worker.js', 'inline-script-hashes.json', 'routes-manifest.json'])
  assert.equal(
    hashOfFile(join(one, file)),
    hashOfFile(join(two, file)),
    `${file} differs between two builds`,
  );
const all = differences(join(one, 'standalone'), join(two, 'standalone'));
const odd = all.differing
  .map((file) => file.replace(/^\.next\//, ''))
  .filter((file) => !DRAWN.test(file) && !PLACED.test(file));
assert.deepEqual(odd, [], 'the folders that run on their own differ');
say(
  `standalone: ${all.files} files, ${all.differing.length} of them with what is drawn by lot or names its folder`,
);

const bare = join(folder, 'srv');
// Links within the folder stay within its copy.
cpSync(join(two, 'standalone'), bare, { recursive: true, verbatimSymlinks: true });
rmSync(built, { recursive: true, force: true });
const size = execFileSync('du', ['-sk', bare]).toString().split('\t')[0];
say(`the folder that runs on its own: ${(Number(size) / 1000).toFixed(0)} MB without Node`);
// As in the image: another user than the files' owner, where this one may become another.
const nobody = process.getuid?.() === 0 ? { uid: 1000, gid: 1000 } : {};
const here = await serve(ROOT);
const there = await serve(bare, nobody);
assert.equal(there.told.commit, 'b'.repeat(40));
assert.equal(there.told.build, here.told.build);
const proxy = await roundRobin([here.port, there.port]);
const pages = Object.keys(JSON.parse(readFileSync(join(one, 'inline-script-hashes.json'), 'utf8'))).filter(
  (path) => !path.startsWith('/_'),
);
await openEverythingOffline(`http://127.0.0.1:${proxy.port}`, pages);
assert.ok(Math.min(...proxy.asked) > 20, `both servers were asked: ${proxy.asked}`);
say(
  `${pages.length} pages open without a network after one visit to two servers (${proxy.asked.join(' and ')} requests)`,
);
proxy.server.closeAllConnections();
proxy.server.close();
const ending = Date.now();
await Promise.all([here.group.end(), there.group.end()]);
say(`both ended in ${Date.now() - ending} ms`);

// What is in it, for whoever has to know (CycloneDX).
const bill = JSON.parse(
  execFileSync('npm', ['sbom', '--sbom-format', 'cyclonedx', '--omit', 'dev'], { cwd: ROOT, maxBuffer: 1e8 }),
);
assert.equal(bill.bomFormat, 'CycloneDX');
assert.ok(bill.components.some(({ name }) => name === 'next'));
mkdirSync(join(ROOT, '.cache'), { recursive: true });
writeFileSync(join(ROOT, '.cache', 'sbom.cdx.json'), JSON.stringify(bill));
say(`.cache/sbom.cdx.json: ${bill.components.length} packages`);
say(`all of it took ${((Date.now() - began) / 1000).toFixed(0)} s`);
process.exit(0);
