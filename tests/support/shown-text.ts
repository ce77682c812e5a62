import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';
import { ROOT, sourceFiles } from './source-tree';

export type ShownText = { readonly path: string; readonly text: string };

/** Types and imports are for the compiler's eyes only. */
const NOT_SHOWN: ReadonlySet<unknown> = new Set([
  'ImportDeclaration',
  'TSTypeAliasDeclaration',
  'TSTypeAnnotation',
  'TSInterfaceDeclaration',
]);

function textOf(node: object): string {
  if (!('type' in node) || !('value' in node)) return '';
  const { type, value } = node;
  if (type === 'TemplateElement' && typeof value === 'object' && value !== null && 'cooked' in value)
    return String(value.cooked);
  return (type === 'JSXText' || type === 'Literal') && typeof value === 'string' ? value : '';
}

/** Two words or more, or one that begins as a sentence does: what is neither is a code, a name of a style or a key. */
const READ_BY_PEOPLE = /[a-z]{2,} |^[A-Z][a-z]+/;

function textsIn(path: string): readonly ShownText[] {
  const found: string[] = [];
  const search = (node: unknown): void => {
    if (typeof node !== 'object' || node === null || ('type' in node && NOT_SHOWN.has(node.type))) return;
    const text = textOf(node).replace(/\s+/g, ' ').trim();
    if (READ_BY_PEOPLE.test(text) && text !== 'use client') found.push(text);
    for (const part of Object.values(node)) search(part);
  };
  search(parseSync(path, readFileSync(join(ROOT, path), 'utf8')).program);
  return found.map((text) => ({ path, text }));
}

/** Every piece of text in the product that a person may come to read: on a page, on paper, in an answer of the API. */
export function shownTexts(): readonly ShownText[] {
  return ['components', 'app', 'lib'].flatMap((folder) =>
    sourceFiles(folder).flatMap(({ path }) => textsIn(path)),
  );
}
