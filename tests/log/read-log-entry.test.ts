import { describe, expect, it } from 'vitest';
import { blankLogDraft, type LogDraft, logDraft } from '@/lib/fields/log/log-rows';
import { readLogEntry } from '@/lib/fields/log/read-log-entry';
import { withItsEvent } from '@/lib/night/event-of-run';
import { DEMO_MACHINE_ID } from '@/lib/night/living-demo';
import { judged, runsToLog } from '@/lib/night/to-log';
import { ALL_RUNS, filteredLog } from '@/lib/store/log-filter';
import { type LogRecord, logRecordSchema, type MachineRecord, type Stored } from '@/lib/store/records';
import { US_UNITS } from '@/lib/units/choice';
import { chicago, demoRecords, nightAt, nightCase } from '../night/night-case';
import { loggedRun, machineRecord } from '../support/machine-record';

const twin: Stored<MachineRecord> = { id: 'twin', revision: 1, updatedAt: '', value: machineRecord() };
const context = { machines: [twin], before: null, zone: 'America/Chicago' };

function typed(change: Partial<LogDraft> = {}): LogDraft {
  const blank = blankLogDraft({ units: US_UNITS, machineId: 'twin', date: '2027-01-16', mains: '410' });
  return {
    ...blank,
    clock: '20:30',
    air: { ...blank.air, temperature: '10', elevation: '650' },
    ...change,
  };
}

describe('a run typed into the log', () => {
  it('needs a time, jets and an air; everything else may be left empty', () => {
    const { value, errors } = readLogEntry(typed(), context);
    expect(errors).toEqual({});
    expect(value).toMatchObject({
      at: '2027-01-16T20:30:00-06:00',
      setting: { mains: [410, 410], trim: null },
      verdict: null,
      sizes: null,
      seconds: null,
    });
    expect(value?.air.temperatureC).toBeCloseTo(-12.2222, 3);
  });

  it('takes a time on either clock', () => {
    for (const clock of ['8:30 pm', '8:30PM', '2030', '20.30'])
      expect(readLogEntry(typed({ clock }), context).value?.at).toBe('2027-01-16T20:30:00-06:00');
    expect(readLogEntry(typed({ clock: '8:3' }), context).errors).toHaveProperty('clock');
  });

  it('takes speeds in miles from whoever reads heights in feet', () => {
    // 1 mile = 1.609344 km exactly (international mile, NIST SP 811).
    expect(readLogEntry(typed({ speed: '100' }), context).value?.speedKmh).toBeCloseTo(160.9344, 9);
  });

  it('says beside each field what is wrong with it', () => {
    const { value, errors } = readLogEntry(
      typed({ clock: '25:00', mains: '410/400/390', seconds: 'fast', machineId: 'nobody' }),
      context,
    );
    expect(value).toBeNull();
    expect(Object.keys(errors).sort()).toEqual(['clock', 'machineId', 'mains', 'seconds']);
  });

  it('notices a sea-level pressure typed for a station pressure', () => {
    const blank = typed();
    const air = { ...blank.air, elevation: '5250', pressureKind: 'station' as const, pressure: '29.97' };
    expect(readLogEntry({ ...blank, air }, context).errors['air.pressure']).toContain('sea-level');
  });

  it('cylinder by cylinder is as lean as its leanest, comes back as it was, and asks for sizes only where off', () => {
    const each = typed({ verdict: 'each', verdicts: ['right', 'lean'], sizes: '1.5' });
    const { value } = readLogEntry(each, context);
    expect(value).toMatchObject({ verdict: 'lean', verdicts: ['right', 'lean'], sizes: 1.5 });
    const again = readLogEntry(logDraft(value!, US_UNITS, '24'), { ...context, before: value });
    expect(again.value?.verdicts).toEqual(['right', 'lean']);
    const alike = readLogEntry({ ...each, verdicts: ['right', 'right'] }, context).value;
    expect(alike).toMatchObject({ verdict: 'right', sizes: 0 });
    expect(alike?.verdicts).toBeUndefined();
    // Said of a machine with fewer cylinders than were looked at: those that are not there do not count.
    const fewer = readLogEntry({ ...each, verdicts: ['rich', 'none', 'lean'], sizes: '' }, context).value;
    expect(fewer).toMatchObject({ verdict: 'rich', verdicts: ['rich', null], sizes: null });
  });

  it('comes back as it was when nothing was touched, seconds and offset of its place too', () => {
    const before = loggedRun('r', {
      at: '2027-01-16T20:30:15+02:00',
      verdict: 'rich',
      sizes: 1.5,
      seconds: 6.42,
      note: 'dark left plug',
    }).value;
    const [{ value }, on12] = (['24', '12'] as const).map((hours) =>
      readLogEntry(logDraft(before, US_UNITS, hours), { ...context, before }),
    ) as [ReturnType<typeof readLogEntry>, ReturnType<typeof readLogEntry>];
    expect([value?.at, on12.value?.at]).toEqual([before.at, before.at]);
    expect(logDraft(before, US_UNITS, '12').clock).toBe('8:30\u00a0pm');
    expect({ ...value, air: null }).toEqual({ ...before, air: null });
    expect(value?.air.temperatureC).toBeCloseTo(before.air.temperatureC, 3);
    expect(value?.air.pressureHpa).toBeCloseTo(before.air.pressureHpa ?? 0, 2);
  });
});

describe('runs of the night that are over', () => {
  const { night, plan } = nightCase(chicago('2027-01-16', '21:40'));
  const waiting = runsToLog({ night, plan, log: [] });

  it('wait for a verdict, the last one first, with their jets and their air', () => {
    expect(waiting.map(({ name }) => name)).toEqual(['Round 4', 'Round 3', 'Round 2', 'Round 1']);
    const [last] = waiting;
    expect(last?.entry.setting.mains).toEqual([...(plan.runs[3]?.setting.mains ?? [])]);
    expect(last?.entry.at).toBe('2027-01-16T21:15:00-06:00');
    expect(last?.entry.air.pressureHpa).toBeCloseTo(968, 6);
    // The demo's evening passes from 10.5 °F at 20:00 to 6 °F at 21:00 and −1.5 °F at 23:00.
    expect(last?.entry.air.temperatureC).toBeLessThan((6 - 32) / 1.8 + 0.5);
    expect(last?.entry.air.temperatureC).toBeGreaterThan((-1.5 - 32) / 1.8);
  });

  it('were told, so nothing is asked of them; a run under way that nobody told of is', () => {
    expect(waiting.every(({ choices }) => choices === null)).toBe(true);
    const under = nightAt(night, chicago('2027-01-16', '22:05'));
    const [first, second] = runsToLog({ night, plan: under.plan, log: [] });
    expect(first?.name).toBe('Round 5');
    expect(first?.choices?.said.mains).toEqual([...(first?.entry.setting.mains ?? [])]);
    expect(second?.choices).toBeNull();
  });

  it('are a record the store accepts after one tap, and wait no more', () => {
    const [last] = waiting;
    const entry = judged(last!.entry, ['right', 'right', 'right']);
    expect(logRecordSchema.parse(entry)).toEqual(entry);
    const log = [{ id: 'x', revision: 1, updatedAt: '', value: entry }];
    expect(runsToLog({ night, plan, log }).map(({ name }) => name)).not.toContain('Round 4');
  });
});

describe('a run typed by hand', () => {
  const { event } = demoRecords(chicago('2027-01-16', '18:15'));
  const at = (time: string, change: Partial<LogRecord> = {}) =>
    withItsEvent(loggedRun('x', { machineId: DEMO_MACHINE_ID, at: time, ...change }).value, [event]).eventId;

  it('belongs to the event its machine takes part in then, so that a lean one counts tonight', () => {
    expect(at('2027-01-16T20:40:00-06:00')).toBe(event.id);
    expect(at('2027-01-16T12:00:00-06:00')).toBe(event.id);
    expect(at('2027-01-20T20:40:00-06:00')).toBeNull();
    expect(at('2027-01-16T20:40:00-06:00', { machineId: 'twin' })).toBeNull();
    expect(at('2027-01-20T20:40:00-06:00', { eventId: 'other' })).toBe('other');
  });
});

describe('the log filtered', () => {
  const log = [
    loggedRun('a', { run: 'Round 1', at: '2027-01-16T19:00:00-06:00', note: 'slick track' }),
    loggedRun('b', { run: 'Round 2', at: '2027-01-16T20:00:00-06:00', verdict: 'rich', sizes: 1 }),
    loggedRun('c', { run: 'Test', at: '2027-01-17T01:30:00Z', verdict: null, machineId: 'other' }),
  ];
  const ids = (change: Partial<typeof ALL_RUNS>) =>
    filteredLog(log, { ...ALL_RUNS, ...change }).map(({ id }) => id);

  it('shows the newest first by the moment, not by the clock of the place', () => {
    expect(ids({})).toEqual(['b', 'c', 'a']);
  });

  it('by machine, verdict and words in any order', () => {
    expect(ids({ machineId: 'other' })).toEqual(['c']);
    expect(ids({ verdict: 'none' })).toEqual(['c']);
    expect(ids({ verdict: 'rich' })).toEqual(['b']);
    expect(ids({ text: 'track round' })).toEqual(['a']);
    expect(ids({ text: '410/410 2027-01-16' })).toEqual(['b', 'a']);
  });
});
