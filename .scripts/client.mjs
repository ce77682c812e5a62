// `npm run client`: a client in TypeScript is made from the service's own document, compiled without any setting, and
// makes the README's calls. After `npm test`, which installs and builds.
import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { freePort } from './free-port.mjs';
import { buildIfNeeded, installIfNeeded } from './prepare.mjs';
import { runGroup, startGroup } from './process-group.mjs';
import { ROOT } from './sources.mjs';

const PATIENCE_MS = 60_000;
const FROM = join(ROOT, 'tests', 'client');
const PLACE = join(ROOT, '.cache', 'client');

async function documentOf(service) {
  const until = Date.now() + PATIENCE_MS;
  for (;;) {
    try {
      return await (await fetch(`${service}/api`)).text();
    } catch (problem) {
      if (Date.now() > until) throw problem;
      await new Promise((resolve) => setTimeout(resolve, 200));
    }
  }
}

await installIfNeeded();
await buildIfNeeded();
const port = await freePort();
const service = `http://localhost:${port}`;
const server = startGroup(process.execPath, [join(ROOT, '.next', 'serve', 'serve.mjs')], {
  cwd: ROOT,
  env: { ...process.env, PORT: String(port) },
});
mkdirSync(PLACE, { recursive: true });
for (const file of ['package.json', 'package-lock.json', 'tsconfig.json', 'calls.mts'])
  copyFileSync(join(FROM, file), join(PLACE, file));
writeFileSync(join(PLACE, 'openapi.json'), await documentOf(service));

const env = { ...process.env, README: join(ROOT, 'README.md'), SERVICE: service };
const steps = [
  ['npm', ['ci', '--no-fund', '--no-audit']],
  ['npx', ['--no-install', 'openapi-typescript', 'openapi.json', '-o', 'schema.d.ts']],
  ['npx', ['--no-install', 'tsc', '-p', '.']],
  ['npx', ['--no-install', 'tsx', 'calls.mts']],
];
let status = 0;
for (const [command, args] of steps)
  if (status === 0) status = await runGroup(command, args, { cwd: PLACE, env });
await server.end();
process.exit(status);
