import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CORE_FOLDERS, EMPTY_NAMES, LIB_ARROWS, OUTSIDE_READS, PACKAGE_DOORS } from './support/arrows';
import { foldersOf, ROOT, type SourceFile, sourceFiles } from './support/source-tree';

const lib = sourceFiles('lib');
const components = sourceFiles('components');
const app = sourceFiles('app');
const product = [...lib, ...components, ...app];

/** Longest a file may be; tables of numbers stand in a file of their own ending in -table.ts. */
const MOST_LINES = 300;
const MOST_ROUTE_LINES = 60;
const MOST_FUNCTION_LINES = 60;

const MACHINE_CLOCK = /\bDate\.now\(\)|new Date\(\)/;
/** Programs of their own, and what tells of the clock itself. */
const OWN_CLOCK = /^(browser|bench|support[/\\]fake-weather|scripts)[/\\]|^architecture\.test\.ts$/;
/** What only tests/browser/test.ts may do: anywhere else a page would see the machine's clock. */
const CLOCKLESS_TESTS = [
  [
    'import of the bare test',
    /import\s*(?!type\b)\{[^}]*(?<!type\s)\btest\b[^}]*\}\s*from '@playwright\/test'/,
  ],
  ['context without a clock', /\.(newContext|launchPersistentContext)\(|\bbrowser\.newPage\(/],
  ['clock of the machine', MACHINE_CLOCK],
] as const;

/** Where package.json's version comes in. */
const VERSION_DOOR = 'lib/contract/version.ts';

const folderOf = (path: string): string => path.split('/')[1] ?? '';
const fileTargets = (file: SourceFile): string[] =>
  file.imports.flatMap((i) => (i.target.kind === 'file' ? [i.target.path] : []));

describe('the house', () => {
  it('knows every folder of lib, and each says in a README what it knows', () => {
    expect([...foldersOf('lib')].sort()).toEqual(Object.keys(LIB_ARROWS).sort());
    expect(foldersOf('lib').filter((folder) => !existsSync(join(ROOT, 'lib', folder, 'README.md')))).toEqual(
      [],
    );
  });

  it('lets lib import only along the listed arrows', () => {
    const wrong = lib.flatMap((file) =>
      fileTargets(file)
        .filter((target) => {
          if (target === 'package.json') return file.path !== VERSION_DOOR;
          if (!target.startsWith('lib/')) return true;
          const [from, to] = [folderOf(file.path), folderOf(target)];
          return from !== to && !LIB_ARROWS[from]?.includes(to);
        })
        .map((target) => `${file.path} -> ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  it('keeps components from importing routes, and ui from knowing a domain word', () => {
    const wrong = components.flatMap((file) =>
      fileTargets(file)
        .filter(
          (target) =>
            target.startsWith('app/') ||
            target.startsWith('tests/') ||
            (file.path.startsWith('components/ui/') && !/^(components\/ui|lib\/units)\//.test(target)),
        )
        .map((target) => `${file.path} -> ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  it('lets nothing in the product import a test', () => {
    expect(
      product.flatMap((f) =>
        fileTargets(f)
          .filter((t) => t.startsWith('tests/'))
          .map((t) => `${f.path} -> ${t}`),
      ),
    ).toEqual([]);
  });

  it('lets each package in by one door', () => {
    const wrong = product.flatMap((file) =>
      file.imports
        .filter((i) => i.target.kind === 'package' && PACKAGE_DOORS[i.target.name] !== undefined)
        .filter(
          (i) =>
            i.target.kind === 'package' &&
            !PACKAGE_DOORS[i.target.name]?.some((door) => file.path.startsWith(door)),
        )
        .map((i) => `${file.path} -> ${i.from}`),
    );
    expect(wrong).toEqual([]);
  });

  it('has no import cycle between files', () => {
    const graph = new Map(product.map((file) => [file.path, fileTargets(file)]));
    const done = new Set<string>();
    const cycles: string[] = [];
    const visit = (path: string, trail: readonly string[]): void => {
      if (trail.includes(path)) cycles.push([...trail.slice(trail.indexOf(path)), path].join(' -> '));
      else if (!done.has(path)) {
        for (const next of graph.get(path) ?? []) visit(next, [...trail, path]);
        done.add(path);
      }
    };
    for (const path of graph.keys()) visit(path, []);
    expect(cycles).toEqual([]);
  });

  it('reads no clock, chance, network or storage in the functional core', () => {
    const wrong = lib
      .filter((file) => CORE_FOLDERS.some((folder) => folder === folderOf(file.path)))
      .filter((file) =>
        OUTSIDE_READS.test(
          readFileSync(join(ROOT, file.path), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, ''),
        ),
      )
      .map((file) => file.path);
    expect(wrong).toEqual([]);
  });

  it('names files for what is in them, exports by name and re-exports nothing', () => {
    expect(product.filter((file) => EMPTY_NAMES.test(file.path)).map((file) => file.path)).toEqual([]);
    expect([...lib, ...components].filter((file) => file.hasDefaultExport).map((file) => file.path)).toEqual(
      [],
    );
    expect(product.filter((file) => file.reExports).map((file) => file.path)).toEqual([]);
  });

  it('keeps files and functions short enough to read', () => {
    const longFiles = product
      .filter((f) => f.lines > MOST_LINES && !f.path.endsWith('-table.ts'))
      .map((f) => `${f.path} ${f.lines}`);
    const longRoutes = app
      .filter((f) => /(page|route|layout)\.tsx?$/.test(f.path) && f.lines > MOST_ROUTE_LINES)
      .map((f) => `${f.path} ${f.lines}`);
    const longFunctions = product
      .filter((f) => (f.longestFunction?.lines ?? 0) > MOST_FUNCTION_LINES)
      .map((f) => `${f.path} ${f.longestFunction?.name} ${f.longestFunction?.lines}`);
    expect({ longFiles, longRoutes, longFunctions }).toEqual({
      longFiles: [],
      longRoutes: [],
      longFunctions: [],
    });
  });

  it('gives up no types', () => {
    const given = /:\s*any\b|\bas any\b|@ts-ignore|@ts-nocheck|@ts-expect-error/;
    expect(
      product.filter((file) => given.test(readFileSync(join(ROOT, file.path), 'utf8'))).map((f) => f.path),
    ).toEqual([]);
  });

  it('opens every page of a browser test under a clock that the test is given', () => {
    const wrong = sourceFiles('tests/browser')
      .filter(({ path }) => path !== 'tests/browser/test.ts')
      .flatMap(({ path }) => {
        const text = readFileSync(join(ROOT, path), 'utf8');
        return CLOCKLESS_TESTS.filter(([, sign]) => sign.test(text)).map(([what]) => `${path}: ${what}`);
      });
    expect(wrong).toEqual([]);
  });

  it('reads no clock of the machine in the core, but where the store is opened and a page begins', () => {
    const readers = lib
      .map(({ path }) => path)
      .filter((path) => /\bDate\.now\b|\bnew Date\(\)/.test(readFileSync(join(ROOT, path), 'utf8')));
    expect(readers).toEqual(['lib/planner/start.ts', 'lib/store/open-store.ts']);
  });

  it('reads no clock of the machine in a unit test', () => {
    const wrong = readdirSync(join(ROOT, 'tests'), { recursive: true, encoding: 'utf8' })
      .filter((path) => /\.tsx?$/.test(path) && !OWN_CLOCK.test(path))
      .filter((path) => MACHINE_CLOCK.test(readFileSync(join(ROOT, 'tests', path), 'utf8')));
    expect(wrong).toEqual([]);
  });
});
