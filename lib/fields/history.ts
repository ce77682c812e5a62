/** A draft with the way back: what stood before each change, oldest first. */
export type History<D> = {
  readonly past: readonly D[];
  readonly present: D;
  /** The field of the last change: typing on in one field is one step back, not one per key. */
  readonly field: string | null;
};

const MOST_STEPS = 100;

export function startHistory<D>(present: D): History<D> {
  return { past: [], present, field: null };
}

/** The history after `field` was changed; null names an act of its own that never joins the one before. */
export function changed<D>(history: History<D>, next: D, field: string | null): History<D> {
  if (next === history.present) return history;
  const joins = field !== null && field === history.field;
  const past = joins ? history.past : [...history.past, history.present].slice(-MOST_STEPS);
  return { past, present: next, field };
}

export function undone<D>(history: History<D>): History<D> {
  const before = history.past.at(-1);
  if (before === undefined) return history;
  return { past: history.past.slice(0, -1), present: before, field: null };
}
