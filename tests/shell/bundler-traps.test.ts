import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT, sourceFiles } from '@/tests/support/source-tree';

/** `for (...; ...; a += ...)`: the third part, where it assigns with an operator. */
const UPDATE = /\bfor \([^;()]*(?:\([^()]*\)[^;()]*)*;[^;]*; ([^)\n]*[-+*/]=[^)\n]*)\)/g;
const IMPORTED = /import \{([^}]*)\} from/g;

function importedNames(code: string): readonly string[] {
  return [...code.matchAll(IMPORTED)].flatMap(([, names = '']) =>
    names.split(',').map(
      (name) =>
        name
          .replace(/^\s*(type )?/, '')
          .trim()
          .split(' as ')
          .at(-1) ?? '',
    ),
  );
}

/** Loops whose update adds an imported name, as `start += 24 * HOUR_MS` does. */
function trappedLoops(code: string): readonly string[] {
  const names = importedNames(code).filter((name) => name !== '');
  return [...code.matchAll(UPDATE)]
    .map(([, update = '']) => update)
    .filter((update) => names.some((name) => new RegExp(`\\b${name}\\b`).test(update)));
}

describe('code as the bundler leaves it', () => {
  // Next 16.4.6 (Turbopack) leaves an imported name in the update of a for loop as it is when the update assigns with
  // an operator: in the browser that is "HOUR_MS is not defined". Copy the import into a constant of the module first.
  it('adds no imported name in the update of a for loop', () => {
    expect(
      trappedLoops(`import { HOUR_MS } from './instant';\nfor (let a = 0; a < 9; a += 24 * HOUR_MS) {}`),
    ).toEqual(['a += 24 * HOUR_MS']);
    const product = ['lib', 'components', 'app'].flatMap((folder) => sourceFiles(folder));
    const found = product.flatMap(({ path }) =>
      trappedLoops(readFileSync(join(ROOT, path), 'utf8')).map((loop) => `${path}: ${loop}`),
    );
    expect(found).toEqual([]);
  });
});
