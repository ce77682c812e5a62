import { describe, expect, it } from 'vitest';
import { intakeAir } from '@/lib/carb/intake';
import { relativePower } from '@/lib/power/relative-power';
import { fahrenheitStepToKelvin } from '@/lib/units/convert';
import { ratio } from '@/lib/units/quantity';
import { airOfFahrenheit } from '../support/race-machine';

// Common practice, no source: horsepower as people in the trade give it.

const kept = (air: Parameters<typeof relativePower>[0]['air'], baselineAir: typeof air) =>
  relativePower({ air, baselineAir, drift: ratio(0), richPowerLoss: 2 });

describe('air from under the hood', () => {
  it('drawing air of 50 °F on a -10 °F night costs 8 to 10 hp of 150', () => {
    // Common practice, no source; the square root of temperature gives 9.1 hp.
    const night = airOfFahrenheit(-10, 1013.25, 0.7);
    const hood = intakeAir(night, fahrenheitStepToKelvin(60));
    const lost = 150 * (1 - kept(hood, night));
    expect(lost).toBeGreaterThan(8);
    expect(lost).toBeLessThan(10);
    expect(lost).toBeCloseTo(9.1, 1);
  });
});

describe('a 90 °F day against winter air of 0 to 20 °F', () => {
  // Common practice, no source: an engine of 150 to 200 hp is said to be down 20 to 35 hp.
  const day = airOfFahrenheit(90);

  it('density gives 19 to 33 hp, which is what people quote', () => {
    const lost = (power: number, winter: number) =>
      power * (1 - day.density / airOfFahrenheit(winter).density);
    expect(lost(150, 20)).toBeCloseTo(19.2, 0);
    expect(lost(200, 0)).toBeCloseTo(32.9, 0);
  });

  it('the law the app uses, √T as in the power standards, gives 10 to 17 hp: the gentle end', () => {
    const lost = (power: number, winter: number) => power * (1 - kept(day, airOfFahrenheit(winter)));
    expect(lost(150, 20)).toBeCloseTo(9.9, 1);
    expect(lost(200, 0)).toBeCloseTo(17.1, 1);
  });

  it('on a humid day the dry pressure takes some of the distance back', () => {
    const humid = airOfFahrenheit(90, 1013.25, 0.6);
    const lost = 200 * (1 - kept(humid, airOfFahrenheit(0)));
    expect(lost).toBeGreaterThan(20);
    expect(lost).toBeLessThan(35);
  });
});
