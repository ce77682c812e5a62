import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, sourceFiles } from './source-tree';

/** Every source file of the product. */
export const PRODUCT: readonly string[] = ['lib', 'app', 'components']
  .flatMap((folder) => sourceFiles(folder))
  .map(({ path }) => path);

/** Files in which a pattern stands, comments and imports left out, by name. */
export function filesWith(pattern: RegExp, files: readonly string[] = PRODUCT): readonly string[] {
  return files
    .filter((path) => {
      const code = readFileSync(join(ROOT, path), 'utf8').replace(
        /\/\*[\s\S]*?\*\/|^\s*\/\/.*$|^import [^;]*;$/gm,
        '',
      );
      return pattern.test(code);
    })
    .toSorted();
}
