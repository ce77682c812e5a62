/** A line in which callers take turns: one of each, whoever asked first going first. */
export type FairLine<T> = {
  /** Puts somebody at the end of the caller's own line; where the whole line is full, gives back who has to go. */
  readonly join: (caller: string, one: T) => T | null;
  /** The next one; undefined where nobody waits. */
  readonly next: () => T | undefined;
  readonly leave: (one: T) => void;
  readonly length: () => number;
};

/**
 * A full line sends away the newest of the caller who has most in it: a flood drowns itself and takes nobody's place.
 */
export function createFairLine<T>(most: number): FairLine<T> {
  // In the order of turns: the first caller of the map is the next one.
  const lines = new Map<string, T[]>();
  let length = 0;
  return {
    join(caller, one) {
      lines.set(caller, [...(lines.get(caller) ?? []), one]);
      length += 1;
      return length > most ? sendAway() : null;
    },
    next() {
      const first = lines.entries().next();
      if (first.done) return undefined;
      const [caller, line] = first.value;
      lines.delete(caller);
      if (line.length > 1) lines.set(caller, line.slice(1));
      length -= 1;
      return line[0];
    },
    leave(one) {
      for (const [caller, line] of lines) {
        const left = line.filter((other) => other !== one);
        length -= line.length - left.length;
        if (left.length === 0) lines.delete(caller);
        else lines.set(caller, left);
      }
    },
    length: () => length,
  };

  function sendAway(): T | null {
    let [longest, whose]: [T[], string] = [[], ''];
    for (const [caller, line] of lines) if (line.length >= longest.length) [longest, whose] = [line, caller];
    const last = longest.pop();
    if (longest.length === 0) lines.delete(whose);
    length -= 1;
    return last ?? null;
  }
}
