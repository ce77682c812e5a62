import { describe, expect, it } from 'vitest';
import { learnResponse } from '@/lib/carb/learn';
import { airFromJson } from '@/lib/contract/air-from-json';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import { expectOk } from '@/lib/result/result';
import { evidenceOf } from '@/lib/store/evidence';
import { withHardware } from '@/lib/store/machine-history';
import { machineBeforeLearning } from '@/lib/store/machine-in-force';
import type { LogRecord, MachineRecord, Stored } from '@/lib/store/records';
import { idealSizes } from '@/tests/support/ideal-sizes';
import { loggedRun, machineRecord } from '../support/machine-record';

const evidence = (record: MachineRecord, log: readonly Stored<LogRecord>[]) =>
  evidenceOf(record, expectOk(machineFromJson(machineBeforeLearning(record))), log);

describe('evidence on the response', () => {
  it('is every run with a verdict; of the others it says why they do not count', () => {
    const { observations, leftOut } = evidence(machineRecord(), [
      loggedRun('good'),
      loggedRun('silent', { verdict: null, sizes: null }),
      loggedRun('single', { setting: { mains: [180], trim: null } }),
      loggedRun('odd', { air: { temperatureC: -10, pressureHpa: 1015, elevationM: 1600 } }),
    ]);
    expect(observations.map(({ id }) => id)).toEqual(['good']);
    expect(leftOut).toEqual([
      { id: 'silent', why: 'no-verdict' },
      { id: 'single', why: 'jets-do-not-fit' },
      { id: 'odd', why: 'air-unclear' },
    ]);
  });

  it('takes a chart cell for the standard atmosphere of its elevation', () => {
    const record = machineRecord({ chart: [{ temperatureC: -10, elevationM: 2000, main: 380 }] });
    const [cell] = evidence(record, []).observations;
    // ISO 2533, 2,000 m: 794.95 hPa; the baseline's 990 hPa.
    expect(cell?.shift.pressure).toBeCloseTo(Math.log(794.95 / 990), 3);
    expect(cell?.group).toBe('chart');
  });

  it('lets runs of before a part tell how the engine moves, not where it stands', () => {
    const change = { id: 'p', kind: 'pipe' as const, amount: null, on: '2027-02-01', note: '' };
    const record = withHardware(machineRecord(), change);
    const { observations } = evidence(record, [
      loggedRun('before', { at: '2027-01-31T20:00:00-06:00' }),
      loggedRun('after', { at: '2027-02-01T20:00:00-06:00' }),
    ]);
    expect(observations.map(({ id, group }) => [id, group])).toEqual([
      ['after', 'log'],
      ['before', 'log-before'],
    ]);
  });

  it('finds the exponents from before and after a part, though the part moved every jet by two sizes', () => {
    const exponents = { pressure: 0.9, temperature: 0.75 };
    const record = withHardware(machineRecord(), {
      id: 'p',
      kind: 'airbox-off',
      amount: null,
      on: '2027-02-01',
      note: '',
    });
    const bare = expectOk(machineFromJson(machineBeforeLearning(machineRecord())));
    const run = (month: string, celsius: number, hpa: number) => {
      const air = { temperatureC: celsius, pressureHpa: hpa, relativeHumidity: 0.6 };
      const right = idealSizes(bare, expectOk(airFromJson(air)), exponents)[0] ?? 0;
      const main = month === '02' ? right * 1.025 ** 2 : right;
      return loggedRun(`${month} ${celsius} ${hpa}`, {
        at: `2027-${month}-16T20:30:00-06:00`,
        air,
        setting: { mains: [main, main], trim: null },
        judgedBy: 'wideband',
      });
    };
    const log = ['01', '02'].flatMap((month) =>
      [-30, -15, 0, 12].flatMap((celsius) => [1000, 900, 840].map((hpa) => run(month, celsius, hpa))),
    );
    const machine = expectOk(machineFromJson(machineBeforeLearning(record)));
    const learned = learnResponse(machine, evidenceOf(record, machine, log).observations);
    expect(learned.origin).toBe('log');
    expect(learned.pressure.low).toBeLessThan(0.9);
    expect(learned.pressure.high).toBeGreaterThan(0.9);
    expect(Math.abs(learned.response.pressureExponent - 0.9)).toBeLessThan(0.05);
    expect(Math.abs(learned.response.temperatureExponent - 0.75)).toBeLessThan(0.05);
    // The level is that of the runs since: two sizes up.
    expect(learned.baselineShift?.log).toBeCloseTo(2 * Math.log(1.025), 2);
  });

  it('leaves out what is older than the last but one change of parts', () => {
    const part = (id: string, on: string) => ({ id, kind: 'pipe' as const, amount: null, on, note: '' });
    const record = withHardware(
      withHardware(machineRecord(), part('a', '2027-01-20')),
      part('b', '2027-02-01'),
    );
    const { leftOut } = evidence(record, [
      loggedRun('old'),
      loggedRun('mid', { at: '2027-01-25T20:00:00Z' }),
    ]);
    expect(leftOut).toEqual([{ id: 'old', why: 'older-hardware' }]);
  });
});
