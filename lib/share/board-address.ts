/** The page of boards; what opens one stands behind the #, which a browser sends to no server. */
export const BOARD_PAGE = '/board';

export type BoardSecrets = {
  readonly id: string;
  readonly keepSecret: string;
  readonly followSecret: string;
};

/** What the address of a board page opens. */
export type BoardDoorway = {
  readonly id: string;
  readonly secret: string;
  /** Of the follower's link, which a keeper's link carries along; the secret itself for a follower. */
  readonly followSecret: string;
  readonly keeps: boolean;
  /** The machine that is looked at; null: none is chosen yet. */
  readonly machine: string | null;
};

/** The link to hand out; with a machine, straight to it. */
export function followHash(
  { id, followSecret }: Pick<BoardSecrets, 'id' | 'followSecret'>,
  machine?: string,
): string {
  return [id, followSecret, ...(machine === undefined ? [] : [machine])].join('.');
}

/** The link of whoever posted it. */
export function keepHash({ id, keepSecret, followSecret }: BoardSecrets): string {
  return `keep.${[id, keepSecret, followSecret].join('.')}`;
}

export function boardAddress(origin: string, hash: string): string {
  return `${origin}${BOARD_PAGE}#${hash}`;
}

/** null where the address opens nothing. */
export function readDoorway(hash: string): BoardDoorway | null {
  const parts = hash.split('.');
  if (parts.some((part) => !/^[\w-]{1,64}$/.test(part))) return null;
  const keeps = parts[0] === 'keep';
  const [id, secret, third] = keeps ? parts.slice(1) : parts;
  if (id === undefined || secret === undefined) return null;
  if (keeps) return third === undefined ? null : { id, secret, followSecret: third, keeps, machine: null };
  return { id, secret, followSecret: secret, keeps, machine: third ?? null };
}

/** Where a browser keeps the followed boards' secrets for its own worker, which answers from a message. */
export const BOARD_DOORS = 'heavy-air-board-doors';

export function boardDoorKey(id: string): string {
  return `/board-doors/${id}`;
}
