import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { COMPONENT_ARROWS } from './support/arrows';
import { filesWith } from './support/files-with';
import { foldersOf, ROOT, type SourceFile, sourceFiles } from './support/source-tree';
import { ONLY_TESTED, PURE_IN_COMPONENTS } from './support/still-to-mend';

const components = sourceFiles('components');
const core = [...sourceFiles('lib'), ...components];
const product = [...core, ...sourceFiles('app')];

const folderOf = (path: string): string => path.split('/')[1] ?? '';

/** "event -> night" for every import from one folder of components to another; ui is open to all. */
const arrows: ReadonlySet<string> = new Set(
  components.flatMap(({ path, imports }) =>
    imports.flatMap(({ target }) => {
      if (target.kind !== 'file' || !target.path.startsWith('components/')) return [];
      const [from, to] = [folderOf(path), folderOf(target.path)];
      return from === to || to === 'ui' ? [] : [`${from} -> ${to}`];
    }),
  ),
);

/** What a rule finds is what is still to mend: no more, and no longer what is mended. */
function expectOnly(found: Iterable<string>, known: readonly string[]): void {
  const now = new Set(found);
  expect({
    new: [...now].filter((each) => !known.includes(each)).sort(),
    'mended, so strike it off': known.filter((each) => !now.has(each)),
  }).toEqual({ new: [], 'mended, so strike it off': [] });
}

describe('folders of components', () => {
  it('are all on the list, each above what it imports', () => {
    const floors = Object.keys(COMPONENT_ARROWS);
    expect([...foldersOf('components')].sort()).toEqual([...floors].sort());
    const up = floors.flatMap((from, floor) =>
      COMPONENT_ARROWS[from]!.filter((to) => floors.indexOf(to) >= floor).map((to) => `${from} -> ${to}`),
    );
    expect(up).toEqual([]);
  });

  it('import along the listed arrows', () => {
    const listed = Object.entries(COMPONENT_ARROWS).flatMap(([from, to]) =>
      to.map((each) => `${from} -> ${each}`),
    );
    expect([...arrows].filter((arrow) => !listed.includes(arrow))).toEqual([]);
  });

  it('do not import each other', () => {
    const pairs = [...arrows].flatMap((arrow) => {
      const [from = '', to = ''] = arrow.split(' -> ');
      return from < to && arrows.has(`${to} -> ${from}`) ? [`${from} <-> ${to}`] : [];
    });
    expect(pairs).toEqual([]);
  });

  it('hold no more code without React than before', () => {
    const packages = ({ imports }: SourceFile) =>
      imports.flatMap(({ target }) => (target.kind === 'package' ? [target.name] : []));
    const pure = components
      .filter(({ path }) => path.endsWith('.ts'))
      .filter(
        (file) => !packages(file).some((name) => /^(react|react-dom|swr|recharts|next|serwist)$/.test(name)),
      );
    expect(pure.length).toBeLessThanOrEqual(PURE_IN_COMPONENTS.files);
    expect(pure.reduce((sum, { lines }) => sum + lines, 0)).toBeLessThanOrEqual(PURE_IN_COMPONENTS.lines);
  });
});

/** What writes to the store, and what hands such a thing out, by file: only components/store may take it. */
const STORE_WRITERS: Readonly<Record<string, readonly string[]>> = {
  'components/store/store-provider.tsx': ['useOpenedStore', 'useOpening'],
  'lib/store/change-record.ts': ['changeRecord', 'putOnTop'],
  'lib/store/open-store.ts': ['openStore'],
  'lib/store/store-type.ts': ['Store'],
  'lib/store/undo-rewrite.ts': ['undoRewrite'],
};
const STORE_WRITES =
  /\bstore\b(?:\(\)|[!?])*\.(?:put|remove|restore|rewrite)\(|(?<!\bcache)\.(?:put|rewrite|restore)\(/;

describe('the store of the browser', () => {
  const outside = [...components, ...sourceFiles('app')].filter(
    ({ path }) => !path.startsWith('components/store/'),
  );

  it('is written to by the door of components/store alone', () => {
    const takers = outside.flatMap(({ path, imports }) =>
      imports.flatMap(({ names, target }) => {
        const writers = target.kind === 'file' ? (STORE_WRITERS[target.path] ?? []) : [];
        return writers
          .filter((name) => names === null || names.includes(name))
          .map((name) => `${path}: ${name}`);
      }),
    );
    const writes = filesWith(
      STORE_WRITES,
      outside.map(({ path }) => path),
    );
    expect({ takers, writes }).toEqual({ takers: [], writes: [] });
  });
});

it('shows every part of ui on the page of parts', () => {
  const shown = components
    .filter(({ path }) => path.startsWith('components/parts/'))
    .flatMap(({ imports }) => imports.flatMap(({ target }) => (target.kind === 'file' ? [target.path] : [])));
  const parts = components
    .map(({ path }) => path)
    .filter((path) => path.startsWith('components/ui/') && path.endsWith('.tsx'));
  expect(parts.filter((path) => !shown.includes(path))).toEqual([]);
});

describe('an exported name', () => {
  it('stands for one thing', () => {
    const files = new Map<string, number>();
    for (const name of core.flatMap(({ exportNames }) => exportNames))
      files.set(name, (files.get(name) ?? 0) + 1);
    expect([...files].flatMap(([name, count]) => (count > 1 ? [name] : []))).toEqual([]);
  });

  it('is used by the product, not only by tests', () => {
    const taken = new Map<string, Set<string> | null>();
    for (const { names, target } of product.flatMap(({ imports }) => imports)) {
      if (target.kind !== 'file') continue;
      const before = taken.get(target.path);
      if (names === null || before === null) taken.set(target.path, null);
      else taken.set(target.path, new Set([...(before ?? []), ...names]));
    }
    const unused = core.flatMap(({ path, exportNames }) => {
      const names = taken.get(path);
      if (names === null) return [];
      const code = codeOf(path);
      return exportNames.filter((name) => !names?.has(name) && countOf(name, code) < 2);
    });
    expectOnly(unused, ONLY_TESTED);
  });
});

/** A file's text without its comments. */
function codeOf(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
}

const countOf = (name: string, code: string): number =>
  code.match(new RegExp(`(?<![\\w$])${name}(?![\\w$])`, 'g'))?.length ?? 0;

describe('a test', () => {
  const tests = sourceFiles('tests')
    .map(({ path }) => path)
    .filter((path) => path !== 'tests/habits.test.ts');

  it('asks for what can be wrong: a search that finds nothing fails by itself, and much is truthy', () => {
    expect(
      filesWith(
        /\.toBeTruthy\(|\b(?:get|find)(?:All)?By\w+\([^;]*?\)\)\s*\.(?:toBeDefined|not\.toBeNull)\(/,
        tests,
      ),
    ).toEqual([]);
  });
});
