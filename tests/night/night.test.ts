import { describe, expect, it } from 'vitest';
import { DEMO_MACHINE_ID as ID } from '@/lib/night/living-demo';
import { logOf, type NightRecords, nightFrom } from '@/lib/night/night';
import { expectOk } from '@/lib/result/result';
import { machineInForce } from '@/lib/store/machine-in-force';
import type { EventRecord, LogRecord, MachineRecord } from '@/lib/store/records';
import { US_UNITS } from '@/lib/units/choice';
import { problemSentences } from '@/lib/words/night-problems';
import { planNight } from '@/tests/support/plan-night';
import { loggedRun } from '../support/machine-record';
import { demoRecords, BEFORE_THE_FIRST_RUN as NOW } from './night-case';

const records = demoRecords(NOW);
const voice = { zone: 'America/Chicago', units: US_UNITS, runNames: ['Round 1'] };

function withEvent(change: Partial<EventRecord>): NightRecords {
  return { ...records, event: { ...records.event, value: { ...records.event.value, ...change } } };
}

function withMachine(change: Partial<MachineRecord['machine']>): NightRecords {
  const { value } = records.machine;
  return {
    ...records,
    machine: { ...records.machine, value: { ...value, machine: { ...value.machine, ...change } } },
  };
}

describe('the log of a night', () => {
  const entry = (at: string, change: Partial<LogRecord> = {}) =>
    loggedRun(at, { machineId: ID, eventId: records.event.id, at, ...change });

  it('holds the runs of this machine at this event, and none of before the event got another date', () => {
    const log = [
      entry('2027-01-16T19:45:00-06:00'),
      entry('2027-01-16T14:00:00-06:00'),
      entry('2027-01-15T19:45:00-06:00'),
      entry('2027-01-18T19:45:00-06:00'),
      entry('2027-01-16T20:30:00-06:00', { eventId: null }),
      entry('2027-01-16T20:30:00-06:00', { machineId: 'other' }),
    ];
    expect(logOf(log, records.event, ID).map(({ at }) => at)).toEqual([
      '2027-01-16T19:45:00-06:00',
      '2027-01-16T14:00:00-06:00',
    ]);
  });
});

describe('a night from its records', () => {
  it('takes the baseline for fitted until it is told', () => {
    const untold = expectOk(nightFrom(records));
    expect(untold.fitted.mains).toEqual([410, 400, 410]);
    expect(untold.request.fitted).toBeNull();
    const told = withEvent({ fitted: { [ID]: { mains: [420, 410, 420], trim: null } } });
    expect(expectOk(nightFrom(told)).fitted.mains).toEqual([420, 410, 420]);
  });

  it('leaves out what was said about jets the machine no longer has', () => {
    const other = withEvent({
      fitted: { [ID]: { mains: [420], trim: null } },
      made: { [ID]: [{ run: 40, setting: { mains: [410, 400, 410], trim: null } }] },
      accepted: { [ID]: [{ mains: [410, 400, 410], trim: null }] },
    });
    expect(expectOk(nightFrom(other)).request).toMatchObject({ fitted: null, made: [], accepted: null });
  });

  it('plans with the shared box where the machine shares one', () => {
    const shared = { ...records, box: { name: 'Trailer', entries: [{ size: 415, count: 3 }] } };
    expect(expectOk(nightFrom(shared)).machine.box).toEqual([{ size: 415, count: 3 }]);
  });

  it('plans from the baseline that is in force', () => {
    const { value } = records.machine;
    const older = { id: 'older', mains: [390, 390, 390], trim: null, baseline: value.machine.baseline };
    const machine = machineInForce({ ...value, baselines: [older], activeBaselineId: 'older' }, null);
    expect(machine.carburettors).toEqual([{ main: 390 }, { main: 390 }, { main: 390 }]);
  });

  it('fills the hours between typed ones and says so', () => {
    const { hours } = expectOk(nightFrom(records)).series;
    expect(new Set(hours.map(({ origin }) => origin))).toEqual(new Set(['typed', 'between']));
  });
});

describe('a night that cannot be planned', () => {
  it('says what to do about a night without hours', () => {
    const night = nightFrom(withEvent({ typed: null }));
    if (night.ok) throw new Error('there are no hours');
    expect(problemSentences(night.reason, voice)).toEqual([
      'The plan needs the temperature of each hour. Get a forecast, or type two temperatures or more.',
    ]);
  });

  it('says what to do about an empty box', () => {
    const plan = planNight(expectOk(nightFrom(withMachine({ box: [] }))), NOW);
    if (plan.ok) throw new Error('the box is empty');
    expect(problemSentences(plan.reason, voice)).toEqual([
      'The box is empty. Add the main jets you own, those in the engine too.',
    ]);
  });

  it('says what to do about a night without runs', () => {
    const { event } = records.event.value;
    const plan = planNight(expectOk(nightFrom(withEvent({ event: { ...event, runs: [] } }))), NOW);
    if (plan.ok) throw new Error('there are no runs');
    expect(problemSentences(plan.reason, voice)[0]).toMatch(/^There is no run to plan for\. Add/);
  });

  it('catches a sea-level pressure typed as station pressure at 1,600 m', () => {
    const { value } = records.event;
    if (value.typed === null) throw new Error('the demo has typed hours');
    const night = nightFrom(
      withEvent({
        event: { ...value.event, elevationM: 1600 },
        typed: { ...value.typed, pressure: { kind: 'station', hpa: 1015 } },
      }),
    );
    if (night.ok) throw new Error('1015 hPa cannot be the station pressure at 1,600 m');
    expect(night.reason.code).toBe('hours');
    const sentences = problemSentences(night.reason, voice);
    // One cause, said once, though every hour has it.
    expect(sentences).toHaveLength(1);
    expect(sentences[0]).toMatch(/29\.97.inHg cannot be the station pressure at 5,249.ft.*11 more places/);
  });
});
