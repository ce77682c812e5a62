/** How a run was found to be: by its plugs, a probe, the clock or the hand. */
export type Verdict = 'lean' | 'right' | 'rich';

/** What was found in each cylinder, by carburettor; null where nobody looked. */
export type CylinderVerdicts = readonly (Verdict | null)[];

/** A verdict on a run as it is kept: `verdicts` only where the cylinders do not all say the same. */
export type SaidVerdict = {
  readonly verdict: Verdict | null;
  readonly verdicts?: (Verdict | null)[];
  /** By how many sizes the leanest are lean or rich: 0 when right, null where nobody said. */
  readonly sizes: number | null;
};

/** The leanest first. */
const LEANEST_FIRST: readonly Verdict[] = ['lean', 'right', 'rich'];

/** The leanest of what was found, since that cylinder is the one that seizes; null where nobody looked. */
export function leanestVerdict(verdicts: CylinderVerdicts): Verdict | null {
  return LEANEST_FIRST.find((verdict) => verdicts.includes(verdict)) ?? null;
}

/** @param sizes said of the leanest cylinders; it counts only where they are off */
export function verdictFields(verdicts: CylinderVerdicts, sizes: number | null): SaidVerdict {
  const verdict = leanestVerdict(verdicts);
  const alike = verdicts.every((each) => each === verdict);
  return {
    verdict,
    ...(alike ? {} : { verdicts: [...verdicts] }),
    sizes: verdict === 'right' ? 0 : verdict === null ? null : sizes,
  };
}

type Said = {
  readonly verdict: Verdict;
  readonly verdicts?: CylinderVerdicts | undefined;
  readonly sizes: number | null;
};

/** One cylinder that was looked at: by how many sizes is known of the leanest only, of the others just the side. */
export type LookedAt = { readonly verdict: Verdict; readonly sizes: number | null };

/** What was found in each of so many cylinders; all alike where they were not looked at one by one. */
export function eachCylinder(
  { verdict, verdicts, sizes }: Said,
  cylinders: number,
): readonly (LookedAt | null)[] {
  const found = Array.from({ length: cylinders }, (_, i) => verdicts?.[i] ?? null);
  if (found.every((each) => each === null)) return found.map(() => ({ verdict, sizes }));
  const leanest = leanestVerdict(found);
  return found.map((each) =>
    each === null ? null : { verdict: each, sizes: each === leanest ? sizes : null },
  );
}
