import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, type SourceFile, sourceFiles } from './source-tree';

/** Every source file of the product, with what it imports. */
export const PRODUCT_FILES: readonly SourceFile[] = ['lib', 'app', 'components'].flatMap((folder) =>
  sourceFiles(folder),
);

/** Every source file of the product, by its path. */
export const PRODUCT: readonly string[] = PRODUCT_FILES.map(({ path }) => path);

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
