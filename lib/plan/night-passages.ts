import type { NightPassages } from './crossings';
import { chancesPassed, type NightNeed } from './passage';
import { chanceOver, type NeedSpread, spreadAt } from './spread';

/** A passage is told where half of the cases have it. */
const HALF = 0.5;
/** Chances at one instant are good to far less than this. */
const ROOM = 0.05;

/** The passages of one machine's night, worked out only where one may have to be told. */
export function nightPassages(night: NightNeed): NightPassages {
  const { machine, curve, track, mean } = night;
  const spreads: (NeedSpread | undefined)[] = [];
  const chanceAt = (j: number, threshold: number) => {
    const spread = spreads[j] ?? spreadAt(machine, { curve, track, i: j, mean: mean[j]! });
    spreads[j] = spread;
    return chanceOver(spread, threshold);
  };
  return {
    at: track.at,
    mean,
    passed(stretch, threshold) {
      const { from, to, rising } = stretch;
      if (chanceAt(rising ? from : to, threshold) > HALF + ROOM) return null;
      // To be above at some time is at most as likely as all times together.
      let together = 0;
      for (let j = from; j <= to; j++) together += chanceAt(j, threshold);
      return together < HALF - ROOM ? null : chancesPassed(night, stretch, threshold);
    },
  };
}
