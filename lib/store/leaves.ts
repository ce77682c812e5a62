import type { TableName } from './records';

/** A record as its single fields and list entries, by path. What belongs together is one leaf and never mixed. */
export type Leaves = ReadonlyMap<string, unknown>;

/** Objects that are taken apart; every other one is a leaf as a whole. */
const OPEN =
  /^(machine|event|typed|club|club\/racers|club\/racers\/[^/]+|accepted|fitted|made|fittings|outFrom|acceptedAir|planned)?$/;

type Item = Readonly<Record<string, unknown>>;

/** Lists whose entries are told apart by what they are, not by their place. */
const LISTS: readonly (readonly [path: RegExp, key: (item: Item) => unknown])[] = [
  [/^(machine\/box|entries)$/, ({ size }) => size],
  [/^machineIds$/, (id) => id],
  [/^readings$/, ({ id, time }) => id ?? time],
  [/^(made|planned)\/[^/]+$/, ({ run }) => run],
  [/^fittings\/[^/]+$/, ({ at }) => at],
  [/^(baselines|hardware|pulls|club\/classes)$/, ({ id }) => id],
  [/^chart$/, ({ temperatureC, elevationM }) => `${temperatureC} ${elevationM}`],
  [/^typed\/hours$/, ({ time }) => time],
];

/** Lists that stand empty where nothing is in them. */
const ALWAYS: Readonly<Partial<Record<TableName, string>>> = {
  machines: 'machine/box',
  boxes: 'entries',
  events: 'machineIds',
  comparisons: 'pulls',
};

/** Fields that are right only together: jets and the air they were proven in, a verdict and what it was judged by. */
const TOGETHER: Readonly<
  Partial<Record<TableName, { readonly leaf: string; readonly paths: readonly string[] }>>
> = {
  machines: {
    leaf: 'proven',
    paths: ['machine/carburettors', 'machine/baseline', 'machine/trim', 'activeBaselineId'],
  },
  log: { leaf: 'found', paths: ['verdict', 'verdicts', 'sizes', 'judgedBy'] },
};

const keyOfItem = (path: string) => LISTS.find(([pattern]) => pattern.test(path))?.[1];
const isObject = (value: unknown): value is Item =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The key of a record in a path, and back: as in a JSON Pointer (RFC 6901). */
export const pathPart = (key: string): string => key.replaceAll('~', '~0').replaceAll('/', '~1');
export const partText = (part: string): string => part.replaceAll('~1', '/').replaceAll('~0', '~');

const under = (path: string, key: unknown): string =>
  `${path}${path === '' ? '' : '/'}${pathPart(String(key))}`;

/** A record taken apart. */
export function leavesOf(table: TableName, value: unknown): Leaves {
  const leaves = new Map<string, unknown>();
  const walk = (path: string, at: unknown): void => {
    const key = keyOfItem(path);
    if (key !== undefined && Array.isArray(at))
      for (const item of at) {
        let place = under(path, key(item));
        while (leaves.has(place)) place += '+';
        leaves.set(place, item);
      }
    else if (isObject(at) && OPEN.test(path))
      for (const [name, each] of Object.entries(at)) walk(under(path, name), each);
    else if (at !== undefined) leaves.set(path, at);
  };
  walk('', value);
  const together = TOGETHER[table];
  if (together === undefined) return leaves;
  const group = together.paths.flatMap((path) => (leaves.has(path) ? [[path, leaves.get(path)]] : []));
  for (const path of together.paths) leaves.delete(path);
  return leaves.set(together.leaf, Object.fromEntries(group));
}

type Branch = Map<string, unknown>;

function place(root: Branch, path: string, value: unknown): void {
  const parts = path.split('/');
  const last = parts.pop() ?? '';
  let at = root;
  for (const part of parts) {
    const next = at.get(part);
    const branch: Branch = next instanceof Map ? next : new Map();
    at.set(part, branch);
    at = branch;
  }
  if (!(at.get(last) instanceof Map)) at.set(last, value);
}

function grown(path: string, at: unknown): unknown {
  if (!(at instanceof Map)) return at;
  const entries = [...(at as Branch)].map(
    ([part, each]) => [partText(part), grown(`${path}${path === '' ? '' : '/'}${part}`, each)] as const,
  );
  return keyOfItem(path) === undefined ? Object.fromEntries(entries) : entries.map(([, each]) => each);
}

/** The record that its leaves make; its schema has the last word on it. */
export function valueOfLeaves(table: TableName, leaves: Leaves): unknown {
  const root: Branch = new Map();
  const together = TOGETHER[table]?.leaf;
  for (const [path, value] of leaves) {
    if (path !== together) place(root, path, value);
    else for (const [inner, each] of Object.entries(isObject(value) ? value : {})) place(root, inner, each);
  }
  const always = ALWAYS[table];
  if (always !== undefined) place(root, always, new Map());
  if (root.get('typed') instanceof Map) place(root, 'typed/hours', new Map());
  return grown('', root);
}
