// What the server sends to whoever takes brotli, compressed once and as hard as it goes: the files of .next/static and
// public, and the pages. It lies in a folder of its own, since public is a source and all of .next/static an address.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { brotliCompressSync, constants } from 'node:zlib';

const COMPRESSIBLE = /\.(js|css|svg|json|txt|html)$/;

function compress(content) {
  return brotliCompressSync(content, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY,
      [constants.BROTLI_PARAM_MODE]: constants.BROTLI_MODE_TEXT,
      [constants.BROTLI_PARAM_SIZE_HINT]: content.length,
    },
  });
}

function filesOf(folder, prefix) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && COMPRESSIBLE.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((full) => {
      const inside = full.slice(folder.length + 1).replaceAll('\\', '/');
      return { path: prefix + inside, name: prefix + inside, content: readFileSync(full) };
    });
}

/** Writes .next/brotli with the list that app/api/_serve/brotli.ts reads; says how many files that are. */
export function writeBrotli(output, open, pages) {
  const to = join(output, 'brotli');
  const all = [
    ...filesOf(join(output, 'static'), '/_next/static/'),
    ...filesOf(open, '/'),
    ...pages.map(({ route, html }) => ({
      path: route,
      name: `${route === '/' ? '/index' : route}.html`,
      content: Buffer.from(html),
    })),
  ].sort((a, b) => (a.path < b.path ? -1 : 1));
  mkdirSync(to, { recursive: true });
  const list = all.flatMap(({ path, name, content }) => {
    const compressed = compress(content);
    if (compressed.length >= content.length) return [];
    const file = `${name.slice(1)}.br`;
    mkdirSync(dirname(join(to, file)), { recursive: true });
    writeFileSync(join(to, file), compressed);
    return [{ path, file, plainBytes: content.length }];
  });
  writeFileSync(join(to, 'files.json'), JSON.stringify(list));
  return list.length;
}
