// What a build is made of. Plain Node with no packages, since it runs before any are installed.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('..', import.meta.url));

/** Everything that can change what is built. */
const SOURCES = [
  'app',
  'components',
  'lib',
  'public',
  'package.json',
  'package-lock.json',
  'next.config.ts',
  'proxy.ts',
  'tsconfig.json',
  '.scripts',
];

function filesBelow(path) {
  return readdirSync(path, { withFileTypes: true })
    .flatMap((entry) => (entry.isDirectory() ? filesBelow(join(path, entry.name)) : [join(path, entry.name)]))
    .sort();
}

/** One number of what is in some files and folders, wherever the checkout lies. */
export function hashOf(paths) {
  const hash = createHash('sha256');
  for (const path of paths.filter((p) => existsSync(join(ROOT, p)))) {
    const full = join(ROOT, path);
    const files = statSync(full).isDirectory() ? filesBelow(full) : [full];
    for (const file of files) hash.update(file.slice(ROOT.length)).update(readFileSync(file));
  }
  return hash.digest('hex');
}

export const hashOfSources = () => hashOf(SOURCES);
