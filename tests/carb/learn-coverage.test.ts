import { describe, expect, it } from 'vitest';
import { standardPressure } from '@/lib/air/standard-atmosphere';
import { evidenceOfChart, evidenceOfLog, type LogEntry } from '@/lib/carb/jet-evidence';
import { jetArea } from '@/lib/carb/jets';
import { learnResponse } from '@/lib/carb/learn';
import { DEFAULT_RESPONSE, type Exponents, logIdealArea } from '@/lib/carb/response';
import { metre } from '@/lib/units/quantity';
import { idealSizes } from '@/tests/support/ideal-sizes';
import { airOf, raceMachine } from '../support/race-machine';
import { type SeededRandom, seededRandom } from '../support/seeded-random';

const machine = raceMachine();
const RUNS_A_NIGHT = 12;
const hectopascalAt = (metres: number) => standardPressure(metre(metres)) / 100;

/**
 * One racer's log: nights of twelve runs at tracks in turn, each night with its own weather, cooling by 8 K, the jets
 * fitted by the trade's middle law to the nearest ten, and plugs read in half sizes with an error of half a size.
 */
function seasonLog(
  random: SeededRandom,
  { truth, nights, tracks }: { truth: Exponents; nights: number; tracks: readonly number[] },
): LogEntry[] {
  // A baseline "judged right" is itself only right to half a size.
  const level = 0.5 * Math.log(420 / 410) * random.normal();
  return Array.from({ length: nights }, (_, night) => {
    const dusk = -8 + 9 * random.normal();
    const hectopascal = hectopascalAt(tracks[night % tracks.length]!) * (1 + 0.008 * random.normal());
    return Array.from({ length: RUNS_A_NIGHT }, (_, run): LogEntry => {
      const air = airOf(dusk - (8 * run) / RUNS_A_NIGHT + random.normal(), hectopascal, 0.7);
      const main = Math.round(idealSizes(machine, air)[0]! / 10) * 10;
      const ideal = level + logIdealArea(machine, air, truth);
      const rich = (Math.log(jetArea(machine.marking, main) / 410) - ideal) / Math.log((main + 10) / main);
      const read = Math.round(2 * (rich + 0.5 * random.normal())) / 2;
      return {
        id: `${night}/${run}`,
        air,
        setting: { mains: [main, main], trim: null },
        verdict: read === 0 ? 'right' : read > 0 ? 'rich' : 'lean',
        sizes: Math.abs(read),
        judgedBy: 'plugs',
      };
    });
  }).flat();
}

/** Share of 1,000 logs whose 90 % interval holds the true exponent. */
function coverage(given: {
  readonly seed: number;
  readonly nights: number;
  readonly tracks: readonly number[];
  readonly truth: (random: SeededRandom) => Exponents;
}): Exponents {
  const random = seededRandom(given.seed);
  const held = { pressure: 0, temperature: 0 };
  for (let i = 0; i < 1000; i++) {
    const truth = given.truth(random);
    const learned = learnResponse(machine, evidenceOfLog(machine, seasonLog(random, { ...given, truth })));
    for (const exponent of ['pressure', 'temperature'] as const) {
      const { low, high } = learned[exponent];
      if (low <= truth[exponent] && truth[exponent] <= high) held[exponent] += 1;
    }
  }
  return { pressure: held.pressure / 1000, temperature: held.temperature / 1000 };
}

/** Every engine of practice alike, and nothing that ties the two exponents: the hardest reading for the prior. */
const anyOfPractice = ({ uniform }: SeededRandom): Exponents => ({
  pressure: 0.5 + 0.5 * uniform(),
  temperature: 0.5 + 0.5 * uniform(),
});

/** Engines as the prior believes them to be. */
const asBelieved = ({ normal }: SeededRandom): Exponents => {
  const { pressureExponent, pressureSd, temperatureExponent, temperatureSd, correlation } = DEFAULT_RESPONSE;
  const shared = normal();
  const own = normal();
  return {
    pressure: pressureExponent + pressureSd * shared,
    temperature:
      temperatureExponent + temperatureSd * (correlation * shared + Math.sqrt(1 - correlation ** 2) * own),
  };
};

const MOUNTAIN_AND_PLAIN = [100, 300, 700, 1500, 2300];
const HILLS = [200, 500, 900];

describe('1,000 simulated logs with known exponents and plugs read to half a size', () => {
  // 85 to 95 % with 1,000 logs has a sampling error of 1 %. Exponents anywhere in 0.5 to 1.0, unrelated, contradict a
  // prior of 0.65 ± 0.12 that ties them together, so the log must be long enough to speak for itself: twelve nights.
  it.each([
    { seed: 1, tracks: MOUNTAIN_AND_PLAIN },
    { seed: 2, tracks: HILLS },
  ])(
    'a season of twelve nights at tracks of $tracks m: 90 % intervals hold the truth in 85 to 95 %',
    (given) => {
      const { pressure, temperature } = coverage({ ...given, nights: 12, truth: anyOfPractice });
      for (const share of [pressure, temperature]) {
        expect(share).toBeGreaterThanOrEqual(0.85);
        expect(share).toBeLessThanOrEqual(0.95);
      }
    },
  );

  it('a single month of four nights at one track, engines as believed: the intervals are honest at any length', () => {
    const { pressure, temperature } = coverage({ seed: 3, nights: 4, tracks: [300], truth: asBelieved });
    for (const share of [pressure, temperature]) {
      expect(share).toBeGreaterThanOrEqual(0.85);
      expect(share).toBeLessThanOrEqual(0.95);
    }
  });
});

describe('a chart of twelve cells', () => {
  // -40 to 30 °C and sea level to 3,000 m, mains rounded to tens: the spread a printed chart has.
  const cells = [-40, -15, 10, 30].flatMap((celsius) =>
    [0, 1500, 3000].map((metres) => ({ celsius, metres })),
  );

  it('gives each exponent within ±0.08 in 99 charts of 100, whatever the exponents and wherever the rounding falls', () => {
    const random = seededRandom(4);
    const close = { pressure: 0, temperature: 0 };
    for (let i = 0; i < 1000; i++) {
      const truth = anyOfPractice(random);
      const reference = 380 + 80 * random.uniform();
      const chart = cells.map(({ celsius, metres }) => {
        const air = airOf(celsius, hectopascalAt(metres), 0.5);
        const main = Math.round((reference * Math.exp(logIdealArea(machine, air, truth))) / 10) * 10;
        return { id: `${celsius}/${metres}`, air, main };
      });
      const { response } = learnResponse(machine, evidenceOfChart(machine, chart));
      if (Math.abs(response.pressureExponent - truth.pressure) <= 0.08) close.pressure += 1;
      if (Math.abs(response.temperatureExponent - truth.temperature) <= 0.08) close.temperature += 1;
    }
    expect(close.pressure).toBeGreaterThanOrEqual(990);
    expect(close.temperature).toBeGreaterThanOrEqual(990);
  });
});
