import { describe, expect, test } from 'vitest';
import { DEFAULT_RESPONSE } from '@/lib/carb/response';
import { type MachineInput, machineSchema } from '@/lib/contract/machine';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import { pathText } from '@/lib/contract/problem';
import { expectOk } from '@/lib/result/result';
import { celsiusToKelvin } from '@/lib/units/convert';
import { twin } from './sent';

const read = (more: Partial<MachineInput> = {}) => expectOk(machineFromJson(twin(more)));
const refused = (more: Partial<MachineInput>) => {
  const machine = machineFromJson(twin(more), ['machine']);
  if (machine.ok) throw new Error('expected a problem');
  return machine.reason.map(({ path, reason }) => [pathText(path), reason.code]);
};

describe('A machine as it is sent', () => {
  test('gets its defaults where nothing was said', () => {
    const machine = read();
    expect(machine).toMatchObject({
      marking: { kind: 'flow' },
      limits: { lean: 0.02, rich: 0.05, risk: 0.05 },
      response: DEFAULT_RESPONSE,
      intakeOffset: 0,
      trim: null,
      pilot: null,
      needle: null,
      fuelDensity: null,
      richPowerLoss: 2,
    });
    expect(machine.baselineAir.temperature).toBe(celsiusToKelvin(-8));
  });

  test('has a worth of a swap and a rated power of its own, or neither', () => {
    expect(read()).toMatchObject({ swapWorth: null, ratedPower: null });
    // 550 ft·lbf/s is 745.6999 W: NIST SP 811 (2008), appendix B.8.
    const machine = read({ swapWorthPercent: 1.5, ratedPowerHp: 100 });
    expect(machine.swapWorth).toBe(0.015);
    expect(machine.ratedPower).toBeCloseTo(74_569.99, 1);
    expect(machineSchema.safeParse(twin({ swapWorthPercent: 0 })).success).toBe(true);
    for (const swapWorthPercent of [-0.1, 20.1])
      expect(machineSchema.safeParse({ ...twin(), swapWorthPercent }).success).toBe(false);
  });

  test('turns percent into ratios and degrees into kelvins, once', () => {
    const machine = read({
      trim: { lowest: 1, highest: 5, baseline: 2, percentPerPosition: 1.5 },
      pilot: { jet: 45, screw: 'fuel', turns: 1.5, percentPerSize: 6 },
      needle: { groove: 3, grooves: 5, percentPerGroove: 2.5 },
      limits: { leanPercent: 1, richPercent: 4, risk: 0.1 },
      fuelDensity: { offsetC: 5, baselineC: -3 },
      intakeOffsetC: 12,
    });
    expect(machine.trim?.richerPerPosition).toBeCloseTo(0.015, 12);
    expect(machine.pilot?.richerPerSize).toBeCloseTo(0.06, 12);
    expect(machine.needle?.richerPerGroove).toBeCloseTo(0.025, 12);
    expect(machine.limits).toEqual({ lean: 0.01, rich: 0.04, risk: 0.1 });
    expect(machine.fuelDensity).toEqual({ offset: 5, baselineTemperature: celsiusToKelvin(-3) });
    expect([machine.intakeOffset, machine.baselineIntakeOffset]).toEqual([12, 12]);
  });

  test('keeps the intake offset the baseline was proven with', () => {
    const machine = read({ intakeOffsetC: 12, baseline: { ...twin().baseline, intakeOffsetC: 3 } });
    expect([machine.intakeOffset, machine.baselineIntakeOffset]).toEqual([12, 3]);
  });

  test('has its box in order, a size written twice owned twice', () => {
    expect(
      read({
        box: [
          { size: 420, count: 2 },
          { size: 400, count: 1 },
          { size: 420, count: 1 },
        ],
      }).box,
    ).toEqual([
      { size: 400, count: 1 },
      { size: 420, count: 3 },
    ]);
  });

  test('judged on the edge of lean has its right jet above the baseline, judged a size rich below', () => {
    const shift = (judged: 'edge' | 'right' | 'size-rich') =>
      read({ baseline: { ...twin().baseline, judged } }).baselineShift?.log ?? Number.NaN;
    expect(shift('edge')).toBeGreaterThan(0);
    expect(shift('right')).toBe(0);
    expect(shift('size-rich')).toBeLessThan(0);
  });

  test('with a list of its own takes the list in order', () => {
    const list = [
      { size: 420, area: 1.06 },
      { size: 400, area: 0.97 },
      { size: 410, area: 1 },
    ];
    expect(read({ jetMarking: { list } }).marking).toEqual({
      kind: 'list',
      jets: [list[1], list[2], list[0]],
    });
  });

  test('naming jets that its list lacks is refused at each of them', () => {
    const list = [
      { size: 400, area: 0.97 },
      { size: 410, area: 1 },
    ];
    expect(refused({ jetMarking: { list } })).toEqual([['machine.box[0].size', 'jet-not-in-list']]);
  });

  test('with a list that is no scale is refused', () => {
    const falling = [
      { size: 400, area: 1 },
      { size: 410, area: 0.97 },
      { size: 420, area: 1.06 },
    ];
    expect(refused({ jetMarking: { list: falling } })).toEqual([
      ['machine.jetMarking.list', 'area-not-rising'],
    ]);
  });

  test('with a sea-level number in its baseline is refused there', () => {
    const baseline = { air: { temperatureC: -8, pressureHpa: 1015, elevationM: 1600 } };
    expect(refused({ baseline })).toEqual([
      ['machine.baseline.air.pressureHpa', 'sea-level-number-as-station'],
    ]);
  });

  test('is not changed by being read', () => {
    const json = twin();
    const copy = structuredClone(json);
    machineFromJson(json);
    expect(json).toEqual(copy);
  });
});
