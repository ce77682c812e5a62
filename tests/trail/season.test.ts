import { describe, expect, it } from 'vitest';
import { airFrom } from '@/lib/air/air-from';
import { boxFromRange } from '@/lib/carb/box';
import { hangingIdleSteps } from '@/lib/carb/hanging-idle';
import { expectOk } from '@/lib/result/result';
import { type SeasonSetup, seasonSetup } from '@/lib/trail/season';
import { winterMonths } from '@/lib/trail/winter';
import { fahrenheitToKelvin } from '@/lib/units/convert';
import { metre, ratio } from '@/lib/units/quantity';
import { isLeanDay, leanDaySentence, seasonMainText } from '@/lib/words/season';
import { airOf, airOfFahrenheit } from '../support/race-machine';
import { AIR_SCREW_PILOT, trailMachine } from '../support/trail-machine';

const machine = trailMachine();
const at = (fahrenheit: number, of = machine): SeasonSetup =>
  expectOk(seasonSetup(of, { name: `${fahrenheit} °F`, air: airOfFahrenheit(fahrenheit) }));

describe('the trade’s seasons, side by side', () => {
  const [spring, midwinter, deepCold] = [at(30), at(0), at(-30)];

  it('in spring air everything stands as it was proven', () => {
    expect(spring.pilot).toMatchObject({ jet: 45, act: 'turn' });
    expect(spring.pilot!.turns).toBeCloseTo(1, 9);
    expect(spring.needle).toMatchObject({ groove: 3 });
    expect(spring.setting.mains).toEqual([410, 410]);
    expect(spring.relativePower).toBeCloseTo(1, 2);
  });

  it('in at 30 °F, out a little at 0 °F on the same pilot', () => {
    // Common practice, no source; need rises 3.2 %, so 1.25 ln 1.032 / ln 1.06 = 0.68 turns.
    expect(midwinter.pilot).toMatchObject({ jet: 45, act: 'turn' });
    expect(midwinter.pilot!.turns - spring.pilot!.turns).toBeCloseTo(0.68, 2);
  });

  it('and the next pilot at -30 °F, since need rises 6.8 % and a pilot step is 6 %', () => {
    // Common practice, no source.
    expect(deepCold.pilot).toMatchObject({ jet: 47.5, act: 'change-jet' });
    expect(deepCold.pilot!.turns).toBeLessThan(midwinter.pilot!.turns);
    expect(Math.expm1(deepCold.logNeed)).toBeCloseTo(0.068, 3);
  });

  it('lifts the needle and enlarges the main as it gets colder, never the other way', () => {
    expect(midwinter.needle!.groove).toBeGreaterThanOrEqual(spring.needle!.groove);
    expect(deepCold.needle!.groove).toBeGreaterThan(spring.needle!.groove);
    expect(midwinter.setting.mains[0]).toBeGreaterThan(410);
    expect(deepCold.setting.mains[0]).toBeGreaterThan(midwinter.setting.mains[0]!);
  });

  it('expects more power the denser the air', () => {
    // The form of SAE J607: 30 °F to -30 °F at one pressure is the root of 489.67/429.67.
    expect(deepCold.relativePower / spring.relativePower).toBeCloseTo(Math.sqrt(489.67 / 429.67), 2);
    expect(deepCold.condition.air.density).toBeGreaterThan(spring.condition.air.density);
  });

  it('turns an air screw the other way by as much', () => {
    // Common practice, no source: fuel screw out is richer, air screw out is leaner.
    const air = trailMachine({ pilot: AIR_SCREW_PILOT });
    const turned = at(0, air).pilot!.turns - at(30, air).pilot!.turns;
    expect(turned).toBeCloseTo(-(midwinter.pilot!.turns - spring.pilot!.turns), 9);
  });

  it('starts an idle that hangs at a leak, then the stop, then the screw, then a pilot', () => {
    // Common practice, no source.
    const { jet, turns } = midwinter.pilot!;
    const steps = hangingIdleSteps({ ...machine.pilot, jet }, turns).map(({ act }) => act);
    expect(steps).toEqual(['find-leak', 'lower-idle', 'richer-by-screw', 'bigger-pilot']);
  });
});

describe('a day for which no jet owned is rich enough', () => {
  const poor = trailMachine({ box: [{ size: machine.carburettors[0]!.main, count: 2 }] });
  const setup = (fahrenheit: number) =>
    expectOk(seasonSetup(poor, { name: 'Deep cold', air: airOfFahrenheit(fahrenheit) }));

  it('has no main in the table that reads like a setting, and says not to hold it open', () => {
    const cold = setup(-40);
    expect(isLeanDay(cold, poor.limits)).toBe(true);
    expect(seasonMainText(cold, poor.limits)).toMatch(/^none; \d+ is lean$/);
    expect(leanDaySentence(cold)).toContain('do not hold it wide open');
  });

  it('is one by its mixture or by its warning, and no other day is', () => {
    for (const fahrenheit of [-40, -20, 0, 10, 20, 30, 40]) {
      const day = setup(fahrenheit);
      const lean =
        day.leanest < -poor.limits.lean || day.warnings.some(({ code }) => code === 'no-jet-rich-enough');
      expect(/lean/.test(seasonMainText(day, poor.limits))).toBe(lean);
    }
    expect(seasonMainText(setup(40), poor.limits)).toMatch(/^\d+$/);
  });
});

describe('a machine of which less is known', () => {
  it('has no screw and no clip where none was described', () => {
    const bare = { ...machine, pilot: null, needle: null };
    const setup = expectOk(seasonSetup(bare, { name: 'cold', air: airOfFahrenheit(0) }));
    expect(setup).toMatchObject({ pilot: null, needle: null });
  });

  it('says that the box ends where no jet is rich enough, and still gives the richest', () => {
    const small = trailMachine({ box: boxFromRange({ lowest: 390, highest: 410, step: 10, count: 2 }) });
    const setup = at(-40, small);
    expect(setup.warnings.map(({ code }) => code)).toContain('no-jet-rich-enough');
    expect(setup.setting.mains).toEqual([410, 410]);
  });

  it('hands on why there is no plan', () => {
    expect(seasonSetup(trailMachine({ box: [] }), { name: 'x', air: airOfFahrenheit(0) })).toEqual({
      ok: false,
      reason: { code: 'empty-box' },
    });
  });
});

describe('places of every height', () => {
  const standardAt = (elevation: number, fahrenheit: number) =>
    expectOk(
      airFrom({
        temperature: fahrenheitToKelvin(fahrenheit),
        pressure: { kind: 'standard', elevation: metre(elevation) },
        humidity: { kind: 'relative', value: ratio(0.8) },
      }),
    );

  it('above 3,000 m asks for a smaller main and pilot, below sea level for a larger main', () => {
    const high = expectOk(seasonSetup(machine, { name: 'plateau', air: standardAt(3_400, 10) }));
    const low = expectOk(seasonSetup(machine, { name: 'sink', air: standardAt(-400, 10) }));
    expect(high.setting.mains[0]).toBeLessThan(410);
    expect(high.pilot!.jet).toBeLessThan(45);
    expect(high.relativePower).toBeLessThan(0.75);
    expect(low.setting.mains[0]).toBeGreaterThan(410);
    expect(low.relativePower).toBeGreaterThan(1);
  });
});

describe('winters of both hemispheres', () => {
  it('has its months around January in the north and around July in the south', () => {
    expect(winterMonths(62)).toEqual([11, 12, 1, 2, 3]);
    expect(winterMonths(-45)).toEqual([5, 6, 7, 8, 9]);
    expect(winterMonths(0)).toEqual([11, 12, 1, 2, 3]);
  });
});

it('asks the same of the same air, whatever it is called', () => {
  const air = airOf(-12.5, 930, 0.8);
  const [a, b] = ['June', 'January'].map((name) => expectOk(seasonSetup(machine, { name, air })));
  expect({ ...a, condition: null }).toEqual({ ...b, condition: null });
});
