import type { Locator, Page } from '@playwright/test';

/** A part of the page as a screen reader has it. */
type Part = {
  readonly role: string;
  readonly name: string;
  /** Of a heading. */
  readonly level: number | null;
  /** Of a link. */
  readonly leadsTo: string | null;
  readonly parts: Part[];
};

const CONTROLS: readonly string[] = [
  'button',
  'checkbox',
  'combobox',
  'link',
  'listbox',
  'radio',
  'searchbox',
  'slider',
  'spinbutton',
  'switch',
  'textbox',
];
/** What a person jumps to by its name. */
const PLACES: readonly string[] = ['dialog', 'form', 'heading', 'img', 'navigation', 'region', 'table'];
/** Said on the way in, so that a name needs to be told apart from others within it only. */
const GROUPS: readonly string[] = [
  'banner',
  'dialog',
  'form',
  'group',
  'main',
  'navigation',
  'region',
  'table',
];

const LINE = /^(?<indent> *)- '?(?<role>[a-z]+)(?: "(?<name>(?:[^"\\]|\\.)*)")?(?<marks>(?: \[[^\]]+\])*)/;

/** The accessibility tree of a part of the page, from the words Playwright writes it in. */
async function treeOf(within: Page | Locator): Promise<Part> {
  const root: Part = { role: 'root', name: '', level: null, leadsTo: null, parts: [] };
  const open = [{ indent: -1, part: root as Part & { leadsTo: string | null } }];
  for (const line of (await within.ariaSnapshot()).split('\n')) {
    const url = /^ *- \/url: "?(?<url>[^"]*)/.exec(line)?.groups?.url;
    const last = open.at(-1);
    if (url !== undefined && last !== undefined) last.part.leadsTo = url;
    const found = LINE.exec(line)?.groups;
    if (found === undefined || found.role === undefined || found.role === 'text') continue;
    const indent = found.indent?.length ?? 0;
    while ((open.at(-1)?.indent ?? -1) >= indent) open.pop();
    const level = /\[level=(\d)\]/.exec(found.marks ?? '')?.[1];
    const part = {
      role: found.role,
      name: found.name ?? '',
      level: level === undefined ? null : Number(level),
      leadsTo: null,
      parts: [],
    };
    open.at(-1)?.part.parts.push(part);
    open.push({ indent, part });
  }
  return root;
}

/** All parts in the order in which they are read, each with the group it is met in. */
function inOrder(part: Part, group: Part = part): readonly (readonly [Part, Part])[] {
  return part.parts.flatMap((child) => [
    [child, group] as const,
    ...inOrder(child, GROUPS.includes(child.role) ? child : group),
  ]);
}

/** The names of regions and headings as they are read, each once. */
export async function placesRead(within: Page | Locator): Promise<readonly string[]> {
  const read = inOrder(await treeOf(within)).filter(([{ role }]) => role === 'region' || role === 'heading');
  return [...new Set(read.map(([{ name }]) => name))];
}

/**
 * What somebody who goes by ear would miss: a control or a place without a name, two controls in one group that nothing
 * tells apart, a heading whose level leaves one out.
 */
export async function readingFaults(within: Page | Locator): Promise<readonly string[]> {
  const read = inOrder(await treeOf(within));
  const called = ({ role, name }: Part) => `${role} "${name}"`;
  const unnamed = read
    .filter(([{ role, name }]) => name.trim() === '' && (CONTROLS.includes(role) || PLACES.includes(role)))
    .map(([part, group]) => `no name: ${part.role} in ${called(group)}`);
  const twins = read
    .filter(([part, group], i) => {
      if (!CONTROLS.includes(part.role)) return false;
      const before = read
        .slice(0, i)
        .find(([{ role, name }, g]) => g === group && role === part.role && name === part.name);
      // Two ways to one place are one.
      return before !== undefined && (part.leadsTo === null || before[0].leadsTo !== part.leadsTo);
    })
    .map(([part, group]) => `twice: ${called(part)} in ${called(group)}`);
  const headings = read.flatMap(([part]) => (part.level === null ? [] : [part]));
  const skipped = headings
    .filter(({ level }, i) => (level ?? 0) > (headings[i - 1]?.level ?? 1) + 1)
    .map((part) => `a level left out before: ${called(part)}`);
  return [...unnamed, ...twins, ...skipped, ...(headings.length === 0 ? ['no heading'] : [])];
}
