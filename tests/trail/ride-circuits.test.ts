import { describe, expect, it } from 'vitest';
import type { Machine } from '@/lib/carb/machine';
import { expectOk } from '@/lib/result/result';
import { rideCircuits } from '@/lib/trail/ride-circuits';
import { planRide } from '@/lib/trail/ride-plan';
import { METRIC_UNITS } from '@/lib/units/choice';
import { ratio } from '@/lib/units/quantity';
import { rideClock } from '@/lib/words/ride';
import { circuitSentences } from '@/lib/words/ride-circuits';
import { airOf } from '../support/race-machine';
import { rideRequest, valleyHours, WINTER_DAY } from '../support/rides';
import { AIR_SCREW_PILOT, SPRING_PILOT, trailMachine } from '../support/trail-machine';

const voice = { zone: 'UTC', units: METRIC_UNITS };
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

function asked(change: Partial<Machine> = {}, celsius = WINTER_DAY) {
  const machine: Machine = { ...trailMachine({ baselineAir: airOf(-6, 930, 0.8) }), ...change };
  const answer = expectOk(planRide(rideRequest({ machine, hours: celsius })));
  const circuits = rideCircuits(machine, answer);
  const said = circuitSentences(circuits, { machine, voice, clock: rideClock(answer, voice) }).map(plain);
  return { machine, answer, circuits, said };
}

describe.each([
  ['fuel', SPRING_PILOT],
  ['air', AIR_SCREW_PILOT],
])('screw and clip for a whole ride, with a %s screw', (screw, pilot) => {
  const { answer, circuits, said } = asked({ pilot });

  it('are never lean in the thickest air, and cost most where it is thinnest', () => {
    for (const circuit of [circuits.pilot!, circuits.clip!]) {
      const lean = circuit === circuits.clip ? 0.02 : 1e-9;
      expect(circuit.thickest.drift).toBeGreaterThanOrEqual(-lean);
      expect(circuit.worst.drift).toBeGreaterThan(circuit.thickest.drift);
      expect(circuit.thickest.at.at).toBe(answer.thickest.at);
      expect(circuit.worst.at.at).toBe(answer.thinnest.at);
    }
  });

  it('cost as much as the orifice law says of the two airs', () => {
    // Fuel an orifice is asked for goes with the root of the density it is drawn by (Bernoulli), read from both airs.
    const { thickest, worst } = circuits.pilot!;
    const airs = Math.sqrt(thickest.at.air.density / worst.at.air.density);
    expect((1 + worst.drift) / (1 + thickest.drift)).toBeCloseTo(airs, 2);
  });

  it('are said for all of it, with what they cost at the worst point and when', () => {
    expect(said).toHaveLength(2);
    expect(said[0]).toMatch(
      new RegExp(
        `^Idle to a quarter throttle, for the whole ride: .*${screw} screw .* out\\. At worst \\(.* °C at \\d\\d:\\d\\d\\) it is \\d`,
      ),
    );
    expect(said[1]).toMatch(/clip in groove \d from the top\. At worst/);
  });
});

describe('a circuit at its end', () => {
  it('says how lean it stays in the thickest air, and what not to do', () => {
    const cold = valleyHours(Array.from({ length: 14 }, () => -45));
    const { circuits, said } = asked({ pilot: { ...SPRING_PILOT, jets: [45], mostTurns: 1 } }, cold);
    expect(circuits.pilot!.thickest.drift).toBeLessThan(-0.02);
    expect(said[0]).toMatch(/No pilot owned is rich enough: in the thickest air it is \d+\.\d % lean/);
    expect(said[0]).toContain('Do not hold');
    expect(said[0]).not.toContain('At worst');
  });

  it('asks for the pilot where none was described, and leaves a clip out that is not', () => {
    const { circuits, said } = asked({ pilot: null, needle: null });
    expect(circuits).toEqual({ pilot: null, clip: null });
    expect(said).toHaveLength(1);
    expect(said[0]).toContain('machines page');
  });

  it('warns where it may load up', () => {
    const { said } = asked({ limits: { lean: ratio(0.02), rich: ratio(0.001), risk: ratio(0.05) } });
    expect(said[0]).toContain('carry a spare plug');
  });
});
