import { describe, expect, it } from 'vitest';
import { nightOfDemo } from '@/lib/night/demo-night';
import { demoDate } from '@/lib/night/living-demo';
import { nightFrom } from '@/lib/night/night';
import { expectOk } from '@/lib/result/result';
import { eventRecordSchema, machineRecordSchema } from '@/lib/store/records';
import { followedDemo } from '@/tests/support/followed-demo';
import { chicago, demoRecords, nightCase } from './night-case';

describe('the demo night', () => {
  it('is a record the store accepts', () => {
    const { event, machine } = followedDemo(chicago('2027-01-16', '18:15'));
    expect(eventRecordSchema.parse(event)).toEqual(event);
    expect(machineRecordSchema.parse(machine)).toEqual(machine);
  });

  it.each(['12:00', '18:15', '21:40'])(
    'asks the planner the same before it is kept and after, so that it is planned once: at %s',
    (clock) => {
      const now = chicago('2027-01-16', clock);
      const { event, machine } = followedDemo(now);
      const kept = <T>(record: T): T => JSON.parse(JSON.stringify(record));
      const after = nightFrom({
        ...demoRecords(now),
        event: { ...demoRecords(now).event, value: eventRecordSchema.parse(kept(event)) },
        machine: { ...demoRecords(now).machine, value: machineRecordSchema.parse(kept(machine)) },
      });
      // By this text the worker knows a request again.
      expect(JSON.stringify(expectOk(after).request)).toBe(
        JSON.stringify(nightOfDemo({ event, machine }).request),
      );
    },
  );

  it('is dated tonight where it is set, whatever the zone of the device', () => {
    // 23:30 in Chicago is half past six the next morning in Berlin, the zone these tests run in.
    expect(demoDate(chicago('2027-01-16', '23:30'))).toBe('2027-01-16');
    expect(demoDate(chicago('2027-01-17', '00:15'))).toBe('2027-01-16');
    expect(demoDate(chicago('2027-01-17', '00:16'))).toBe('2027-01-17');
    expect(demoDate(chicago('2027-01-17', '02:00'))).toBe('2027-01-17');
    expect(demoDate(chicago('2027-01-17', '09:00'))).toBe('2027-01-17');
  });

  it('runs from 19:00 past midnight and says that it is invented', () => {
    const { event } = followedDemo(chicago('2027-01-16', '12:00'));
    expect(event.event.runs[0]?.start).toBe('2027-01-16T19:00:00-06:00');
    expect(event.event.runs.at(-1)?.end).toBe('2027-01-17T00:30:00-06:00');
    expect(event.demo).toBe(true);
  });

  it('falls from 18 °F to -10 °F in the hours that were typed', () => {
    const celsius = followedDemo(chicago('2027-01-16', '12:00')).event.typed?.hours.map(
      (hour) => hour.temperatureC,
    );
    expect(celsius).toContain((18 - 32) / 1.8);
    expect(Math.min(...(celsius ?? []))).toBe((-10 - 32) / 1.8);
  });

  it.each(['12:00', '18:15', '19:10', '20:12', '21:30', '23:59'])(
    'has a plan without a run in danger of running lean when opened at %s',
    (clock) => {
      const { plan, night } = nightCase(chicago('2027-01-16', clock));
      const planned = plan.runs.filter(({ state }) => state === 'planned');
      expect(planned.filter((run) => run.chanceOfLean > night.machine.limits.risk)).toEqual([]);
    },
  );

  it('shows a racer who has gone by the call when it is opened late', () => {
    const { night, plan } = nightCase(chicago('2027-01-16', '23:20'));
    expect(night.request.made.map(({ run }) => run)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(plan.runs.filter(({ state }) => state === 'made')).toHaveLength(6);
    expect(night.fitted).toEqual(night.request.made.at(-1)?.setting);
  });
});
