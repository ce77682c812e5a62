/** A line in which callers get like shares of the work, not like numbers of turns. */
export type CostLine<T> = {
  /** Puts somebody at the end of the caller's own line; gives back who has to go for it, the newcomer perhaps. */
  readonly join: (caller: string, one: T, cost: number) => readonly T[];
  /** The next one; undefined where nobody waits. */
  readonly next: () => T | undefined;
  readonly leave: (one: T) => void;
  readonly length: () => number;
  /** All that waits. */
  readonly cost: () => number;
};

type Limits = {
  /** What may wait for one caller. */
  readonly ofOne: number;
  /** What may wait in all. */
  readonly ofAll: number;
};

type Place<T> = { readonly one: T; readonly cost: number };
type Own<T> = { readonly places: Place<T>[]; cost: number; had: number };

/** More callers than this are remembered only while they wait. */
const MOST_CALLERS = 1000;

/**
 * Start-time fair queueing (Goyal, Vin and Cheng 1996): next is who has had the least work done, newcomers beginning
 * where the others are now; once nobody waits, all begin anew. A full line sends away the newest of the caller with most
 * work in it, so that a flood drowns itself and takes nobody's place.
 */
export function createCostLine<T>({ ofOne, ofAll }: Limits): CostLine<T> {
  const lines = new Map<string, Own<T>>();
  let now = 0;
  const waiting = (): readonly Own<T>[] => [...lines.values()];
  const costOfAll = (): number => waiting().reduce((sum, { cost }) => sum + cost, 0);
  const take = (own: Own<T>, place: Place<T> | undefined): T | undefined => {
    if (place === undefined) return undefined;
    own.places.splice(own.places.indexOf(place), 1);
    own.cost -= place.cost;
    return place.one;
  };
  /** Whoever waits for nothing and is not ahead of the others need not be remembered. */
  const forget = (): void => {
    const crowded = lines.size > MOST_CALLERS;
    for (const [caller, own] of lines)
      if (own.places.length === 0 && (crowded || own.had <= now)) lines.delete(caller);
  };
  return {
    join(caller, one, cost) {
      const own = lines.get(caller) ?? { places: [], cost: 0, had: now };
      if (own.places.length === 0) own.had = Math.max(own.had, now);
      if (own.cost > 0 && own.cost + cost > ofOne) return [one];
      lines.set(caller, own);
      own.places.push({ one, cost });
      own.cost += cost;
      const away: T[] = [];
      while (costOfAll() > ofAll) {
        const most = waiting().reduce((a, b) => (b.cost > a.cost ? b : a));
        const last = take(most, most.places.at(-1));
        if (last === undefined) break;
        away.push(last);
      }
      return away;
    },
    next() {
      const asking = waiting().filter(({ places }) => places.length > 0);
      if (asking.length === 0) {
        lines.clear();
        now = 0;
        return undefined;
      }
      const own = asking.reduce((a, b) => (b.had < a.had ? b : a));
      now = own.had;
      own.had += own.places[0]?.cost ?? 0;
      const one = take(own, own.places[0]);
      forget();
      return one;
    },
    leave(one) {
      for (const own of lines.values())
        take(
          own,
          own.places.find((place) => place.one === one),
        );
    },
    length: () => waiting().reduce((sum, { places }) => sum + places.length, 0),
    cost: costOfAll,
  };
}
