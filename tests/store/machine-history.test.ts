import { describe, expect, it } from 'vitest';
import { learnResponse } from '@/lib/carb/learn';
import { USUAL_LOG_STEP } from '@/lib/carb/size-step';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import { expectOk } from '@/lib/result/result';
import { evidenceOf } from '@/lib/store/evidence';
import {
  baselinesOf,
  withActiveBaseline,
  withHardware,
  withLearned,
  withNewBaseline,
  withoutBaseline,
  withoutHardware,
  withoutLearned,
} from '@/lib/store/machine-history';
import { hardwareSince, machineBeforeLearning, machineInForce } from '@/lib/store/machine-in-force';
import { type MachineRecord, machineRecordSchema } from '@/lib/store/records';
import { loggedRun, machineRecord } from '../support/machine-record';

const summer = {
  id: 'summer',
  mains: [380, 380],
  trim: null,
  baseline: { air: { temperatureC: 20, elevationM: 200 }, judged: 'right' as const, provenOn: '2027-06-01' },
};
const pipe = { id: 'pipe', kind: 'pipe' as const, amount: null, on: '2027-02-01', note: '' };
const planned = (record: MachineRecord) => expectOk(machineFromJson(machineInForce(record, null)));

describe('several baselines of one machine', () => {
  it('start with the machine’s own, which stays when another comes', () => {
    const record = withNewBaseline(machineRecord(), summer, 'first');
    expect(baselinesOf(record, 'x').map(({ id }) => id)).toEqual(['first', 'summer']);
    expect(machineRecordSchema.parse(record)).toEqual(record);
  });

  it('are planned from by the one in force, and can be changed back', () => {
    const record = withNewBaseline(machineRecord(), summer, 'first');
    expect(planned(record).carburettors).toEqual([{ main: 380 }, { main: 380 }]);
    const back = withActiveBaseline(record, 'first');
    expect(planned(back)).toEqual(planned(machineRecord()));
    expect(back.machine.carburettors).toEqual([{ main: 410 }, { main: 410 }]);
  });

  it('can be deleted, but never the one in force', () => {
    const record = withNewBaseline(machineRecord(), summer, 'first');
    expect(withoutBaseline(record, 'summer')).toEqual(record);
    expect(withoutBaseline(record, 'first').baselines.map(({ id }) => id)).toEqual(['summer']);
    expect(withActiveBaseline(record, 'nobody')).toEqual(record);
  });
});

describe('hardware since the baseline', () => {
  it('marks it to be re-proven, moves the ideal by the stated shift and widens the doubt', () => {
    const before = planned(machineRecord()).baselineShift;
    const record = withHardware(machineRecord(), pipe);
    expect(record.toBeReproven).toBe(true);
    const after = planned(record).baselineShift;
    // One size up, give or take one and a half: common practice, no source.
    expect((after?.log ?? 0) - (before?.log ?? 0)).toBeCloseTo(USUAL_LOG_STEP, 12);
    expect(after?.sd).toBeCloseTo(Math.hypot(before?.sd ?? 0, 1.5 * USUAL_LOG_STEP), 12);
    expect(withoutHardware(record, 'pipe').toBeReproven).toBe(false);
  });

  it('is proven with a newer baseline, of the same day too, and counts again for an older one', () => {
    const sameDay = { ...summer, baseline: { ...summer.baseline, provenOn: '2027-02-01' } };
    for (const added of [summer, sameDay]) {
      const record = withNewBaseline(withHardware(machineRecord(), pipe), added, 'first');
      expect(record.toBeReproven).toBe(false);
      expect(machineInForce(record, null).hardware).toBeUndefined();
      expect(withActiveBaseline(record, 'first').toBeReproven).toBe(true);
    }
  });

  it('of the day a baseline was proven counts as after it, unless it is known to have been in place', () => {
    const record = withHardware(machineRecord(), { ...pipe, on: '2027-01-10' });
    expect(hardwareSince(record)).toHaveLength(1);
    expect(hardwareSince(withHardware(machineRecord(), { ...pipe, on: '2027-01-09' }))).toEqual([]);
  });

  it('counts a second fuel from the first, whatever the order they were typed in', () => {
    const fuel = (id: string, amount: number, on: string) => ({
      id,
      kind: 'fuel' as const,
      amount,
      on,
      note: '',
    });
    const typedBackwards = withHardware(
      withHardware(machineRecord(), fuel('b', 0.1, '2027-03-01')),
      fuel('a', 0.85, '2027-02-01'),
    );
    expect(hardwareSince(typedBackwards).map(({ id }) => id)).toEqual(['a', 'b']);
    expect(planned(typedBackwards).baselineShift?.log).toBeCloseTo(
      planned(machineRecord()).baselineShift?.log ?? 0,
      9,
    );
  });
});

describe('what was learned', () => {
  const log = [-25, -15, 0, 10].map((temperatureC, i) =>
    loggedRun(`r${i}`, {
      air: { temperatureC, pressureHpa: 900 + 20 * i, elevationM: 400 },
      verdict: 'rich',
      sizes: 1,
    }),
  );
  const record = machineRecord();
  const learn = (of: MachineRecord) => {
    const machine = expectOk(machineFromJson(machineBeforeLearning(of)));
    return learnResponse(machine, evidenceOf(of, machine, log).observations);
  };
  const learned = learn(record);
  const taught = withLearned(record, learned);

  it('is what plans use, with its origin', () => {
    expect(machineRecordSchema.parse(taught)).toEqual(taught);
    expect(taught.machine.response?.origin).toBe('log');
    const machine = planned(taught);
    expect(machine.response).toEqual(learned.response);
    expect(machine.baselineShift).toEqual(learned.baselineShift);
  });

  it('about the baseline holds for that baseline and those parts only', () => {
    expect(planned(withHardware(taught, pipe)).baselineShift).toEqual(
      planned(withHardware(record, pipe)).baselineShift,
    );
    const other = withNewBaseline(taught, summer, 'first');
    expect(machineInForce(other, null).baselineShift).toBeUndefined();
    expect(machineInForce(withActiveBaseline(other, 'first'), null).baselineShift).toBeDefined();
  });

  it('is not counted twice when it is learned again', () => {
    expect(learn(taught)).toEqual(learned);
  });

  it('can be given up for the default', () => {
    expect(planned(withoutLearned(taught))).toEqual(planned(record));
  });
});
