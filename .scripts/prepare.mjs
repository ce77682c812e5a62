// Brings a fresh or changed checkout to a working state: packages first, then the build.
// Plain Node with no packages, since it runs before any are installed.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { runGroup } from './process-group.mjs';
import { hashOf, hashOfSources, ROOT } from './sources.mjs';

const STAMPS = join(ROOT, 'node_modules', '.heavy-air');

/** Runs a command in the repository and stops everything when it fails. */
export async function run(command, args, env = {}) {
  const status = await runGroup(command, args, { cwd: ROOT, env: { ...process.env, ...env } });
  if (status === 0) return;
  console.error(`\n"${command} ${args.join(' ')}" failed (exit ${status}).`);
  process.exit(status);
}

function isStamped(name, hash) {
  const path = join(STAMPS, name);
  return existsSync(path) && readFileSync(path, 'utf8') === hash;
}

/** Notes that something is as it should be for this hash. */
export function stamp(name, hash) {
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
  const hash = hashOfSources();
  if (existsSync(join(ROOT, '.next', 'BUILD_ID')) && isStamped('build', hash)) return;
  console.log('Building ...');
  await run('npm', ['run', '--silent', 'build']);
}
