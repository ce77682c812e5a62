import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSync } from 'vite';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

export type SourceFile = {
  /** Path from the root, with forward slashes. */
  readonly path: string;
  readonly lines: number;
  readonly imports: readonly SourceImport[];
  readonly longestFunction: { readonly name: string; readonly lines: number } | null;
  readonly hasDefaultExport: boolean;
  readonly exportNames: readonly string[];
  readonly reExports: boolean;
};

export type SourceImport = {
  readonly from: string;
  /** Names it takes; null where it takes all of them, as `import *` and `import()` do. */
  readonly names: readonly string[] | null;
  /** A file of ours (path from the root), or a package name. */
  readonly target:
    | { readonly kind: 'file'; readonly path: string }
    | { readonly kind: 'package'; readonly name: string };
};

const SOURCE = /\.(ts|tsx)$/;
const EXTENSIONS = ['', '.ts', '.tsx', '/index.ts', '/index.tsx'];

function isFile(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isFile() ?? false;
}

function packageName(specifier: string): string {
  const parts = specifier.split('/');
  return specifier.startsWith('@') ? parts.slice(0, 2).join('/') : (parts[0] ?? specifier);
}

/** Resolves as the bundler does, so that a relative path cannot slip past a rule about folders. */
function resolveImport(importer: string, specifier: string): Omit<SourceImport, 'names'> {
  const base = specifier.startsWith('@/')
    ? join(ROOT, specifier.slice(2))
    : specifier.startsWith('.')
      ? resolve(dirname(importer), specifier)
      : null;
  if (base === null) return { from: specifier, target: { kind: 'package', name: packageName(specifier) } };
  const found = EXTENSIONS.map((extension) => base + extension).find(isFile);
  if (found === undefined)
    throw new Error(`${relative(ROOT, importer)} imports ${specifier}, which does not exist`);
  return { from: specifier, target: { kind: 'file', path: relative(ROOT, found) } };
}

type Node = {
  readonly type?: unknown;
  readonly start?: unknown;
  readonly end?: unknown;
  readonly id?: unknown;
} & Record<string, unknown>;

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && 'type' in value;

function walk(node: unknown, visit: (node: Node) => void): void {
  if (Array.isArray(node)) {
    for (const child of node) walk(child, visit);
  } else if (isNode(node)) {
    visit(node);
    for (const key of Object.keys(node)) walk(node[key], visit);
  }
}

const isFunction = (node: Node): boolean =>
  node.type === 'FunctionDeclaration' ||
  node.type === 'FunctionExpression' ||
  node.type === 'ArrowFunctionExpression';

function longestFunction(program: unknown, source: string): SourceFile['longestFunction'] {
  let longest: { name: string; lines: number } | null = null;
  walk(program, (node) => {
    if (!isFunction(node) || typeof node.start !== 'number' || typeof node.end !== 'number') return;
    const lines = source.slice(node.start, node.end).split('\n').length;
    const name = isNode(node.id) && typeof node.id.name === 'string' ? node.id.name : 'anonymous';
    if (longest === null || lines > longest.lines) longest = { name, lines };
  });
  return longest;
}

function readSource(path: string): SourceFile {
  const source = readFileSync(path, 'utf8');
  const parsed = parseSync(path, source);
  if (parsed.errors.length > 0) throw new Error(`${path}: ${parsed.errors[0]?.message}`);
  const { module } = parsed;
  const dynamic = module.dynamicImports.map((i) =>
    source.slice(i.moduleRequest.start, i.moduleRequest.end).replace(/^['"`]|['"`]$/g, ''),
  );
  const reExported = module.staticExports.flatMap((e) => e.entries).filter((e) => e.moduleRequest !== null);
  const statics = module.staticImports.map((i) => ({
    from: i.moduleRequest.value,
    names: i.entries.every((e) => e.importName.kind === 'Name')
      ? i.entries.map((e) => e.importName.name ?? '')
      : null,
  }));
  const taken = [
    ...statics,
    ...reExported.map((e) => ({ from: e.moduleRequest!.value, names: null })),
    ...dynamic.map((from) => ({ from, names: null })),
  ];
  return {
    path: relative(ROOT, path),
    lines: source.split('\n').length,
    imports: taken.map(({ from, names }) => ({ ...resolveImport(path, from), names })),
    longestFunction: longestFunction(parsed.program, source),
    hasDefaultExport: module.staticExports
      .flatMap((e) => e.entries)
      .some((e) => e.exportName.kind === 'Default'),
    exportNames: module.staticExports.flatMap((e) => e.entries).flatMap((e) => e.exportName.name ?? []),
    reExports: reExported.length > 0,
  };
}

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return filesBelow(path);
    return SOURCE.test(entry.name) && !entry.name.endsWith('.d.ts') ? [path] : [];
  });
}

/** Every source file below a folder of the repository, parsed. */
export function sourceFiles(folder: string): readonly SourceFile[] {
  return filesBelow(join(ROOT, folder)).map(readSource);
}

/** Names of the folders directly below one. */
export function foldersOf(folder: string): readonly string[] {
  return readdirSync(join(ROOT, folder), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name);
}
