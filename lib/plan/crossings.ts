import { instant } from '@/lib/time/instant';
import { TURNING_LOG } from './judgement';
import type { Stretch } from './passage';
import type { Crossing, DriftState } from './types';

/** What crossings are told from. */
export type NightPassages = {
  readonly at: Float64Array;
  /** Ideal log area at the mean. */
  readonly mean: Float64Array;
  /**
   * Chance that the ideal has been above a threshold by each instant of a stretch, from its start where it rises and
   * backwards from its end where it falls. null where it is told at once that over half of the cases don't pass.
   */
  readonly passed: (stretch: Stretch, threshold: number) => Float64Array | null;
};

/** Above `lean` a setting is lean, below `rich` too rich; between it is right. */
type Lane = { readonly lean: number; readonly rich: number };

/** Splits the night where its mean turns by more than a wiggle. */
export function stretchesOf(mean: Float64Array): readonly Stretch[] {
  const stretches: Stretch[] = [];
  const last = mean.length - 1;
  let direction: 'rising' | 'falling' | null = null;
  let [from, low, high] = [0, 0, 0];
  for (let j = 1; j <= last; j++) {
    if (mean[j]! > mean[high]!) high = j;
    if (mean[j]! < mean[low]!) low = j;
    if (direction !== 'falling' && mean[high]! - mean[j]! > TURNING_LOG) {
      if (direction === 'rising') {
        stretches.push({ from, to: high, rising: true });
        from = high;
      }
      direction = 'falling';
      low = j;
    } else if (direction !== 'rising' && mean[j]! - mean[low]! > TURNING_LOG) {
      if (direction === 'falling') {
        stretches.push({ from, to: low, rising: false });
        from = low;
      }
      direction = 'rising';
      high = j;
    }
  }
  stretches.push({
    from,
    to: last,
    rising: direction === null ? mean[last]! >= mean[0]! : direction === 'rising',
  });
  return stretches;
}

/**
 * The time by which a share of cases has passed, on the line of numbers with both infinities: −∞ before the stretch
 * begins, +∞ not in it. A rising stretch asks for the first time above, a falling one for the last: a setting counts as
 * lean from the first moment to the last, wobbles included. Straight between instants.
 */
export function timeOfShare(
  at: Float64Array,
  { from, to, rising }: Stretch,
  given: { readonly passed: Float64Array; readonly share: number },
): number {
  const { passed } = given;
  const share = rising ? given.share : 1 - given.share;
  const k = passed.findIndex((chance) => chance >= share);
  if (k === -1) return rising ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  if (k === 0) return rising ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  const timeAt = (place: number) => at[rising ? from + place : to - place]!;
  const way = (share - passed[k - 1]!) / (passed[k]! - passed[k - 1]!);
  return timeAt(k - 1) + (timeAt(k) - timeAt(k - 1)) * way;
}

function crossing(
  night: NightPassages,
  stretch: Stretch,
  pass: { readonly threshold: number; readonly to: DriftState },
): readonly Crossing[] {
  const passed = night.passed(stretch, pass.threshold);
  if (passed === null) return [];
  const timeOf = (share: number) => timeOfShare(night.at, stretch, { passed, share });
  const [earliest, at, latest] = [timeOf(0.1), timeOf(0.5), timeOf(0.9)];
  if (!Number.isFinite(at)) return [];
  return [
    {
      at: instant(at),
      earliest: instant(Math.max(earliest, night.at[stretch.from]!)),
      latest: Number.isFinite(latest) ? instant(latest) : null,
      to: pass.to,
    },
  ];
}

/**
 * When a setting passes from one state into another: every passage that happens in over half of the cases, with its
 * median time and the range that holds it in 80 % of nights.
 */
export function crossingsOf(night: NightPassages, lane: Lane): readonly Crossing[] {
  return stretchesOf(night.mean).flatMap((stretch) =>
    stretch.rising
      ? [
          ...crossing(night, stretch, { threshold: lane.rich, to: 'right' }),
          ...crossing(night, stretch, { threshold: lane.lean, to: 'lean' }),
        ]
      : [
          ...crossing(night, stretch, { threshold: lane.lean, to: 'right' }),
          ...crossing(night, stretch, { threshold: lane.rich, to: 'rich' }),
        ],
  );
}
