import { describe, expect, it } from 'vitest';
import { baselineSetting } from '@/lib/carb/baseline-setting';
import { drifts } from '@/lib/carb/drift';
import { hardwareShift } from '@/lib/carb/hardware';
import { judgedShift } from '@/lib/carb/judged';
import { logIdealArea } from '@/lib/carb/response';
import { USUAL_LOG_STEP } from '@/lib/carb/size-step';
import { fairComparison } from '@/lib/power/fair-comparison';
import { relativePower } from '@/lib/power/relative-power';
import { expectOk } from '@/lib/result/result';
import { horsepowerToWatt } from '@/lib/units/convert';
import { ratio } from '@/lib/units/quantity';
import { idealSizes } from '@/tests/support/ideal-sizes';
import { airOfFahrenheit, raceMachine } from '../support/race-machine';

// Common practice, no source: what people in the trade say, in their numbers.

describe('dusk to night', () => {
  it.each([15, 20])('from %d °F at dusk to -10 °F at night a race carburettor wants another main', (dusk) => {
    // Common practice, no source.
    const machine = raceMachine({ baselineAir: airOfFahrenheit(dusk) });
    const night = airOfFahrenheit(-10);
    const more = Math.expm1(logIdealArea(machine, night));
    expect(more).toBeGreaterThan(0.03);
    expect(more).toBeLessThan(0.05);
    expect(more).toBeGreaterThan(Math.expm1(USUAL_LOG_STEP));
    for (const size of idealSizes(machine, night)) expect(size).toBeGreaterThan(420);
    // Left alone, the dusk jet passes the lean limit of racing.
    for (const drift of drifts(machine, baselineSetting(machine), night))
      expect(drift).toBeLessThan(-machine.limits.lean);
  });
});

describe('boring', () => {
  it.each([1, 2, 3])('a carburettor bored %d mm takes about as many main sizes up', (millimetres) => {
    // Common practice, no source.
    const shift = expectOk(hardwareShift({ kind: 'bored', amount: millimetres }));
    expect(shift.log / USUAL_LOG_STEP).toBeCloseTo(millimetres, 12);
    expect(shift.source).toBe('common practice, no source');
    expect(shift.reprove).toBe(true);
  });

  it('and less slide cutaway if the bottom goes lean', () => {
    // Common practice, no source.
    expect(expectOk(hardwareShift({ kind: 'bored', amount: 2 })).cautions).toContain(
      'less-cutaway-if-bottom-lean',
    );
  });
});

describe('a new engine and its airbox', () => {
  const air = airOfFahrenheit(30);
  const right = raceMachine({ baselineAir: air });
  const stock = { mains: [430, 430], trim: null };

  it('stock, two sizes above right, it stands about 5 % rich', () => {
    // Common practice, no source: a new stock engine is one to two sizes rich.
    for (const drift of drifts(right, stock, air)) expect(drift).toBeCloseTo(0.049, 3);
  });

  it('a baseline a size rich asks for the size below', () => {
    // Common practice, no source.
    const rich = raceMachine({
      baselineAir: air,
      baselineShift: judgedShift('size-rich', { ...right, main: 410 }),
    });
    for (const size of idealSizes(rich, air)) expect(Math.round(size / 10) * 10).toBe(400);
  });

  it('the airbox off leans it to about right, so it makes a little more power with no gain of its own', () => {
    // Common practice, no source.
    const open = expectOk(hardwareShift({ kind: 'airbox-off', amount: null }));
    const opened = { ...right, baselineShift: open };
    const before = drifts(right, stock, air)[0]!;
    const after = drifts(opened, stock, air)[0]!;
    expect(Math.abs(after)).toBeLessThan(0.01);
    expect(open.cautions).toContain('seems-a-gain-if-it-was-rich');
    const power = (drift: typeof before) =>
      relativePower({ air, baselineAir: air, drift, richPowerLoss: right.richPowerLoss });
    expect(power(after)).toBeGreaterThan(power(before));
  });

  it('and the fair comparison gives the gain to the mixture, not to the missing box', () => {
    // Common practice, no source: an engine further out, five sizes rich, so that the gain shows on a dyno.
    const farRich = drifts(right, { mains: [460, 460], trim: null }, air)[0]!;
    const pulls = (drift: typeof farRich) =>
      [0.999, 1, 1.001].map((scatter) => {
        const share = relativePower({ air, baselineAir: air, drift, richPowerLoss: 2 });
        const power = horsepowerToWatt(150 * share * scatter);
        return { measured: { kind: 'power', power } as const, air, drift: { mean: drift, sd: ratio(0.005) } };
      });
    const fair = expectOk(fairComparison(pulls(farRich), pulls(ratio(0.02))));
    expect(fair.total.change).toBeGreaterThan(0.02);
    expect(fair.mixture.change / fair.total.change).toBeGreaterThan(0.9);
    expect(fair.part.low).toBeLessThan(0);
    expect(fair.part.high).toBeGreaterThan(0);
  });
});
