import { describe, expect, it } from 'vitest';
import { intakeAir } from '@/lib/carb/intake';
import { INTAKE_CHOICES } from '@/lib/carb/intake-choices';
import { kelvinDifference } from '@/lib/units/quantity';
import { airOf } from '../support/race-machine';

const k = kelvinDifference;

describe('the air the carburettor draws', () => {
  it('with no offset is the weather itself', () => {
    const weather = airOf(-10, 990, 0.8);
    expect(intakeAir(weather, k(0))).toBe(weather);
  });

  it('is warmed at the same pressure with the same water in it', () => {
    const weather = airOf(-23, 990, 0.8);
    const hood = intakeAir(weather, k(30));
    expect(hood.temperature).toBeCloseTo(weather.temperature + 30, 12);
    expect(hood.pressure).toBe(weather.pressure);
    expect(hood.vapourMoleFraction / weather.vapourMoleFraction).toBeCloseTo(1, 9);
    expect(hood.relativeHumidity).toBeLessThan(0.2);
  });

  it('is thinner in proportion to temperature, but for compressibility', () => {
    const weather = airOf(-23, 990, 0.8);
    const hood = intakeAir(weather, k(30));
    // Z rises by 0.04 % over this step.
    expect((hood.density * hood.temperature) / (weather.density * weather.temperature)).toBeCloseTo(1, 3);
  });

  it('dry air stays dry', () => {
    expect(intakeAir(airOf(0, 990, 0), k(10)).vapourMoleFraction).toBe(0);
  });

  it('cooled past its dew point it is just saturated', () => {
    const chilled = intakeAir(airOf(20, 990, 0.95), k(-5));
    expect(chilled.relativeHumidity).toBe(1);
  });

  it('a hot hood on a hot day is still air', () => {
    expect(intakeAir(airOf(45, 990, 0.3), k(60)).density).toBeLessThan(0.95);
  });
});

describe('usual offsets by how the engine draws', () => {
  it('a sealed box is nearly the weather, a hood is the hot end of what is told', () => {
    // Common practice, no source: 50 °F under the hood on a -10 °F night is 33 K.
    const { ducted, open, hood } = INTAKE_CHOICES;
    expect(ducted).toBeGreaterThan(0);
    expect(ducted).toBeLessThan(open);
    expect(open).toBeLessThan(hood);
    expect(hood).toBeLessThanOrEqual(34);
    expect(hood).toBeGreaterThanOrEqual(20);
  });
});
