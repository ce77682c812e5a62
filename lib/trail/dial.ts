import type { PressureKind } from '@/lib/air/air';
import { airAt } from '@/lib/air/air-from';
import type { Machine, Pilot } from '@/lib/carb/machine';
import { type PilotAdvice, pilotFor } from '@/lib/carb/pilot';
import { type Kelvin, kelvin, type Pascal, type Ratio } from '@/lib/units/quantity';
import { circuitNeed } from './season';

/** Where the dial is read: everything about the air but its temperature. */
export type DialPlace = {
  readonly pressure: Pascal;
  readonly pressureFrom: PressureKind;
  readonly relativeHumidity: Ratio;
};

export type DialSpan = { readonly coldest: Kelvin; readonly warmest: Kelvin };

export type DialPoint = { readonly temperature: Kelvin; readonly turns: number };

/** A stretch of temperatures that one pilot serves, coldest first. */
export type DialStretch = {
  readonly jet: number;
  /** `held`: the screw stands at its end and no owned pilot reaches further. */
  readonly reach: 'within' | 'held';
  readonly points: readonly DialPoint[];
};

/** Going colder or warmer than this, another pilot is fitted, or none is left. */
export type Takeover = {
  readonly at: Kelvin;
  /** The pilot on the cold side and on the warm side of it. */
  readonly colder: Pick<DialStretch, 'jet' | 'reach'>;
  readonly warmer: Pick<DialStretch, 'jet' | 'reach'>;
};

export type ScrewDial = {
  readonly pilot: Pilot;
  readonly stretches: readonly DialStretch[];
  readonly takeovers: readonly Takeover[];
  /** Where the baseline was proven. */
  readonly baseline: DialPoint;
};

/** Distance of the points of the picture [K]. */
const STEP = 0.5;
/** How closely a takeover is found [K]. */
const SHARP = 0.01;

type Sample = DialPoint & Pick<DialStretch, 'jet' | 'reach'>;

/** Turns against temperature at one place, with the pilot each stretch of temperatures takes. */
export function screwDial(
  machine: Machine & { readonly pilot: Pilot },
  place: DialPlace,
  span: DialSpan,
): ScrewDial {
  const sampleAt = (t: number): Sample => sample(machine, place, kelvin(t));
  const count = Math.max(1, Math.ceil((span.warmest - span.coldest) / STEP));
  const samples = Array.from({ length: count + 1 }, (_, i) =>
    sampleAt(span.coldest + ((span.warmest - span.coldest) * i) / count),
  );
  const stretches: { jet: number; reach: DialStretch['reach']; points: DialPoint[] }[] = [];
  const takeovers: Takeover[] = [];
  for (const each of samples) {
    const last = stretches.at(-1);
    const point = { temperature: each.temperature, turns: each.turns };
    if (last !== undefined && isSame(last, each)) last.points.push(point);
    else {
      const before = last?.points.at(-1);
      if (last !== undefined && before !== undefined) {
        const [cold, warm] = between(sampleAt, before.temperature, each.temperature);
        last.points.push({ temperature: cold.temperature, turns: cold.turns });
        takeovers.push({ at: warm.temperature, colder: stand(cold), warmer: stand(warm) });
        stretches.push({
          ...stand(warm),
          points: [{ temperature: warm.temperature, turns: warm.turns }, point],
        });
      } else stretches.push({ ...stand(each), points: [point] });
    }
  }
  const { temperature } = machine.baselineAir;
  return {
    pilot: machine.pilot,
    stretches,
    takeovers,
    baseline: { temperature, turns: machine.pilot.turns },
  };
}

const stand = ({ jet, reach }: Pick<DialStretch, 'jet' | 'reach'>) => ({ jet, reach });
const isSame = (a: Pick<DialStretch, 'jet' | 'reach'>, b: typeof a) => a.jet === b.jet && a.reach === b.reach;

function sample(machine: Machine & { readonly pilot: Pilot }, place: DialPlace, temperature: Kelvin): Sample {
  const advice: PilotAdvice = pilotFor(machine.pilot, circuitNeed(machine, airAt({ temperature, ...place })));
  const reach = advice.act === 'none-left' ? 'held' : 'within';
  return { temperature, turns: advice.turns, jet: advice.jet, reach };
}

/** The last sample of the cold side and the first of the warm side, halving the stretch between them. */
function between(sampleAt: (t: number) => Sample, cold: number, warm: number): readonly [Sample, Sample] {
  let [a, b] = [sampleAt(cold), sampleAt(warm)];
  while (b.temperature - a.temperature > SHARP) {
    const middle = sampleAt((a.temperature + b.temperature) / 2);
    if (isSame(middle, a)) a = middle;
    else b = middle;
  }
  return [a, b];
}

/** What the dial says at one temperature; null outside its span. */
export function dialAt(
  { stretches }: ScrewDial,
  temperature: Kelvin,
): { readonly point: DialPoint; readonly jet: number; readonly reach: DialStretch['reach'] } | null {
  for (const { points, jet, reach } of stretches) {
    const i = points.findIndex((point) => point.temperature >= temperature);
    const b = points[i];
    if (b === undefined) continue;
    const a = points[i - 1];
    if (a === undefined) return b.temperature === temperature ? { point: b, jet, reach } : null;
    const share = (temperature - a.temperature) / (b.temperature - a.temperature);
    return { point: { temperature, turns: a.turns + share * (b.turns - a.turns) }, jet, reach };
  }
  return null;
}
