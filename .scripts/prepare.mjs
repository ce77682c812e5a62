// Brings a fresh or changed checkout to a working state: packages first, then the build.
// Plain Node with no packages, since it runs before any are installed.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runGroup } from './process-group.mjs';

export const ROOT = fileURLToPath(new URL('..', import.meta.url));
const STAMPS = join(ROOT, 'node_modules', '.heavy-air');

/** Runs a command in the repository and stops everything when it fails. */
export async function run(command, args, env = {}) {
  const status = await runGroup(command, args, { cwd: ROOT, env: { ...process.env, ...env } });
  if (status === 0) return;
  console.error(`\n"${command} ${args.join(' ')}" failed (exit ${status}).`);
  process.exit(status);
}

function filesBelow(path) {
  return readdirSync(path, { withFileTypes: true })
    .flatMap((entry) => (entry.isDirectory() ? filesBelow(join(path, entry.name)) : [join(path, entry.name)]))
    .sort();
}

function hashOf(paths) {
  const hash = createHash('sha256');
  for (const path of paths.filter((p) => existsSync(join(ROOT, p)))) {
    const full = join(ROOT, path);
    const files = statSync(full).isDirectory() ? filesBelow(full) : [full];
    for (const file of files) hash.update(file.slice(ROOT.length)).update(readFileSync(file));
  }
  return hash.digest('hex');
}

function isStamped(name, hash) {
  const path = join(STAMPS, name);
  return existsSync(path) && readFileSync(path, 'utf8') === hash;
}

function stamp(name, hash) {
  mkdirSync(STAMPS, { recursive: true });
  writeFileSync(join(STAMPS, name), hash);
}

/** Installs packages when there are none or the lock file has changed since. */
export async function installIfNeeded() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    console.error(`Heavy Air needs Node 20.19 or newer; this is ${process.versions.node}.`);
    process.exit(1);
  }
  const hash = hashOf(['package-lock.json']);
  if (isStamped('packages', hash)) return;
  console.log('Installing packages ...');
  await run('npm', ['ci', '--no-fund', '--no-audit', '--include=dev']);
  stamp('packages', hash);
}

/** Builds when there is no build or a source has changed since. */
export async function buildIfNeeded() {
  const hash = hashOf([
    'app',
    'components',
    'lib',
    'public',
    'package-lock.json',
    'next.config.ts',
    'proxy.ts',
    'tsconfig.json',
    '.scripts',
  ]);
  if (existsSync(join(ROOT, '.next', 'BUILD_ID')) && isStamped('build', hash)) return;
  console.log('Building ...');
  await run('npm', ['run', '--silent', 'build'], { NEXT_TELEMETRY_DISABLED: '1' });
  stamp('build', hash);
}
