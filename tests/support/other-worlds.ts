import type { HourSeries, Sky } from '@/lib/hours/series';
import { temperatureError } from '@/lib/plan/forecast-error';
import type { Instant } from '@/lib/time/instant';
import { metre, ratio, speedMs } from '@/lib/units/quantity';
import { asStated, type OtherWorld, type Straying } from './simulated-nights';

/**
 * Whole nights stretched so that errors are Student's t with 4 degrees of freedom and the same variance: heavier tails
 * than measured, where official forecasts have about 8 to 10 (excess kurtosis 1.0 to 1.4).
 */
const heavyTailed: Straying = (process, at, next) => {
  const freedom = 4;
  const squares = Array.from({ length: freedom }, () => next() ** 2).reduce((a, b) => a + b);
  const stretch = Math.sqrt((freedom - 2) / squares);
  return asStated(process, at, next).map((each) => stretch * each);
};

/** Errors that are forgotten to 1/e in nine hours and not in six. */
const slow: Straying = (process, at, next) =>
  asStated({ ...process, clock: (t) => (process.clock(t) * 6) / 9 }, at, next);

const CLEAR: Sky = { cloudCover: ratio(0), wind: speedMs(1), snowDepth: metre(0.3), daylight: false };

/** Every hour a raw model's, under a clear calm sky over snow. */
function rawAndClear(series: HourSeries): HourSeries {
  return { ...series, hours: series.hours.map((hour) => ({ ...hour, rawModel: true, sky: CLEAR })) };
}

/** Every hour a raw model's that has no bias: as wide as one, under clouds. */
function rawAlone(series: HourSeries): HourSeries {
  const sky = { ...CLEAR, cloudCover: ratio(1) };
  return { ...series, hours: series.hours.map((hour) => ({ ...hour, rawModel: true, sky })) };
}

/** Nobody says who made the hours. */
function untold(series: HourSeries): HourSeries {
  return { ...series, hours: series.hours.map(({ rawModel: _, ...hour }) => hour) };
}

/**
 * A raw model that is 1.4 K too warm every night, as measured under clear skies with little wind, where the planner counts
 * on 1 K, half of the nights none. It goes with the cold as the planner's own does.
 */
const alwaysWarm = {
  truly: rawAlone,
  colder: (series: HourSeries, now: Instant) => {
    const { mean } = temperatureError({ series: rawAndClear(series), now });
    return (at: number) => 1.4 * mean(at);
  },
};

/** Worlds that are not the one the planner states, and its own. */
export const WORLDS = {
  'as stated': {},
  "Student's t with 4 degrees of freedom": { straying: heavyTailed },
  'a memory of 9 h': { straying: slow },
  "a raw model's bias that nobody told of": { ...alwaysWarm, told: untold },
  "a raw model's bias that was told": { ...alwaysWarm, told: rawAndClear },
} as const satisfies Readonly<Record<string, OtherWorld>>;
