// What the night page shows, kept once more where a script can read it before anything else of the page has arrived: the
// database takes longer to open than a plan to make. It goes with the first write to the store, whoever makes it, so it
// is there only while it is what the store holds. A copy, never a source: what cannot be read or kept is done without.
const KEY = 'heavy-air-night';

/** The build whose records these are; another may know more of them, or less. */
const build = (): string | undefined => process.env.PLANNER_FILE;

/** Keeps the night that is shown, as JSON. */
export function keepNight(json: string): void {
  const by = build();
  if (by === undefined) return;
  try {
    localStorage.setItem(KEY, `${by} ${json}`);
  } catch {
    // Full, or forbidden.
    dropKeptNight();
  }
}

/** The night as it was kept by this build and not written to since; null where there is none. */
export function keptNight(): string | null {
  const by = `${build()} `;
  const kept = localStorage.getItem(KEY) ?? '';
  return kept.startsWith(by) ? kept.slice(by.length) : null;
}

/** Forgets it: something was written. */
export function dropKeptNight(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Where it cannot be dropped it could not be kept.
  }
}
