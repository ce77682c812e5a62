import { instant } from '@/lib/time/instant';
import { TURNING_LOG } from './judgement';
import type { Crossing, DriftState } from './types';

/** Ideal log areas of the whole night: of every draw, and of the mean. */
export type NightIdeals = {
  readonly at: Float64Array;
  /** Of instant j in draw s at [s * instants + j]. */
  readonly drawn: Float64Array;
  readonly draws: number;
  readonly mean: Float64Array;
};

/** Above `lean` a setting is lean, below `rich` too rich; between it is right. */
export type Lane = { readonly lean: number; readonly rich: number };

/** A stretch over which the night's mean ideal goes one way. */
type Stretch = { readonly from: number; readonly to: number; readonly rising: boolean };

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
 * When one draw passes a threshold within a stretch, on the line of numbers with both infinities: −∞ it had passed
 * before, +∞ it does not pass. A rising stretch asks for the first time above, a falling one for the last: a setting
 * counts as lean from the first moment to the last, wobbles included.
 */
function passage(
  night: NightIdeals,
  { from, to, rising }: Stretch,
  at: { readonly draw: number; readonly threshold: number },
): number {
  const { drawn } = night;
  const { threshold } = at;
  const row = at.draw * night.at.length;
  if (drawn[row + (rising ? from : to)]! > threshold)
    return rising ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  let j = rising ? from + 1 : to - 1;
  const step = rising ? 1 : -1;
  while (j >= from && j <= to && drawn[row + j]! <= threshold) j += step;
  if (j > to) return Number.POSITIVE_INFINITY;
  if (j < from) return Number.NEGATIVE_INFINITY;
  const [above, below] = [drawn[row + j]!, drawn[row + j - step]!];
  const share = (threshold - below) / (above - below);
  return night.at[j - step]! + (night.at[j]! - night.at[j - step]!) * share;
}

/**
 * The value below which a share of a law lies, from n sorted draws of it. The draws stand for n equal strata, each in
 * the middle of its own, so the share lies at place n share − ½ (A. Hazen, Trans. ASCE 77 (1914) 1539). Infinite where
 * a neighbour is.
 */
export function quantileOf(sorted: Float64Array, share: number): number {
  const place = share * sorted.length - 0.5;
  const below = Math.max(0, Math.floor(place));
  const above = Math.min(sorted.length - 1, Math.ceil(place));
  const [a, b] = [sorted[below]!, sorted[above]!];
  if (a === b || below === above) return a;
  if (!Number.isFinite(a)) return a;
  return Number.isFinite(b) ? a + (b - a) * (place - below) : b;
}

/** All draws' passages of a stretch through a threshold, sorted. */
function passages(night: NightIdeals, stretch: Stretch, threshold: number): Float64Array {
  const times = new Float64Array(night.draws);
  for (let draw = 0; draw < night.draws; draw++) times[draw] = passage(night, stretch, { draw, threshold });
  return times.sort();
}

function crossing(
  night: NightIdeals,
  stretch: Stretch,
  pass: { readonly threshold: number; readonly to: DriftState },
): readonly Crossing[] {
  const times = passages(night, stretch, pass.threshold);
  const at = quantileOf(times, 0.5);
  if (!Number.isFinite(at)) return [];
  const [earliest, latest] = [quantileOf(times, 0.1), quantileOf(times, 0.9)];
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
 * When a setting passes from one state into another: every passage that happens in over half of the draws, with its
 * median time and the range that holds it in 80 % of nights.
 */
export function crossingsOf(night: NightIdeals, lane: Lane): readonly Crossing[] {
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
