import { fail, ok, type Result } from '@/lib/result/result';
import type { JetMarking } from './machine';

type ListedJet = { readonly size: number; readonly area: number };

/** Why a person's own list of jets cannot be read as a scale. */
export type MarkingProblem =
  | { readonly code: 'too-few-jets-listed'; readonly listed: number }
  | { readonly code: 'jet-not-positive'; readonly size: number; readonly area: number }
  | { readonly code: 'size-listed-twice'; readonly size: number }
  /** A larger number must pass more fuel, or the number is no scale. */
  | { readonly code: 'area-not-rising'; readonly size: number; readonly next: number };

/** The same list sorted by size, once every jet on it is proven to pass more than the one before. */
function sortedJets(jets: readonly ListedJet[]): Result<readonly ListedJet[], MarkingProblem> {
  if (jets.length < 2) return fail({ code: 'too-few-jets-listed', listed: jets.length });
  const bad = jets.find(({ size, area }) => !(isPositive(size) && isPositive(area)));
  if (bad !== undefined) return fail({ code: 'jet-not-positive', size: bad.size, area: bad.area });
  const sorted = [...jets].sort((a, b) => a.size - b.size);
  for (let i = 1; i < sorted.length; i++) {
    const before = sorted[i - 1]!;
    const jet = sorted[i]!;
    if (jet.size === before.size) return fail({ code: 'size-listed-twice', size: jet.size });
    if (jet.area <= before.area) return fail({ code: 'area-not-rising', size: before.size, next: jet.size });
  }
  return ok(sorted);
}

/** null where the marking can be used as a scale. */
export function markingProblem(marking: JetMarking): MarkingProblem | null {
  if (marking.kind !== 'list') return null;
  const sorted = sortedJets(marking.jets);
  return sorted.ok ? null : sorted.reason;
}

/**
 * Relative flow area of a jet from the number stamped on it; only ratios between jets of one marking mean anything.
 *
 *     flow: A ∝ number      bore: A ∝ number²      list: straight lines in (ln number, ln area)
 *
 * Outside a list its last slope carries on, between the powers 1/8 and 8.
 *
 * @param marking what the number means
 * @param size the number on the jet, > 0; need not be a size that is made
 * @throws RangeError on a size that is not positive or a list that is no scale (check with markingProblem first)
 */
export function jetArea(marking: JetMarking, size: number): number {
  if (!isPositive(size)) throw new RangeError(`a jet size must be a positive number, got ${size}`);
  if (marking.kind === 'flow') return size;
  if (marking.kind === 'bore') return size * size;
  return Math.exp(interpolate(logScale(marking.jets), Math.log(size)));
}

/** The continuous size that passes a relative area; the inverse of jetArea, with the same limits. */
export function sizeOfArea(marking: JetMarking, area: number): number {
  if (!isPositive(area)) throw new RangeError(`a jet area must be a positive number, got ${area}`);
  if (marking.kind === 'flow') return area;
  if (marking.kind === 'bore') return Math.sqrt(area);
  const inverse = logScale(marking.jets).map(({ x, y }) => ({ x: y, y: x }));
  return Math.exp(interpolate(inverse, Math.log(area)));
}

type Knot = { readonly x: number; readonly y: number };

/** Steepest and flattest power of the number believed outside the list; flow marks are 1, bore marks 2. Judgement. */
const STEEPEST = 8;
const FLATTEST = 1 / STEEPEST;
/** How far the carried-on ends reach, in ln number: beyond any jet. */
const REACH = 20;

/** The list as (ln number, ln area), with an end knot far out on either side. */
function logScale(jets: readonly ListedJet[]): readonly Knot[] {
  const sorted = sortedJets(jets);
  if (!sorted.ok) throw new RangeError(`the list of jets is no scale: ${sorted.reason.code}`);
  const knots = sorted.value.map(({ size, area }) => ({ x: Math.log(size), y: Math.log(area) }));
  const first = carriedOn(knots[1]!, knots[0]!);
  const last = carriedOn(knots[knots.length - 2]!, knots[knots.length - 1]!);
  return [first, ...knots, last];
}

function carriedOn(inner: Knot, end: Knot): Knot {
  const slope = Math.min(Math.max((end.y - inner.y) / (end.x - inner.x), FLATTEST), STEEPEST);
  const reach = Math.sign(end.x - inner.x) * REACH;
  return { x: end.x + reach, y: end.y + reach * slope };
}

/** Straight lines between rising knots, so monotone and exactly invertible. */
function interpolate(knots: readonly Knot[], x: number): number {
  let right = 1;
  while (right < knots.length - 1 && knots[right]!.x < x) right += 1;
  const a = knots[right - 1]!;
  const b = knots[right]!;
  return a.y + ((x - a.x) * (b.y - a.y)) / (b.x - a.x);
}

function isPositive(value: number): boolean {
  return Number.isFinite(value) && value > 0;
}
