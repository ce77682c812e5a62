import { describe, expect, it } from 'vitest';
import { DEMO_MACHINE_ID as ID } from '@/lib/night/living-demo';
import { nightFrom } from '@/lib/night/night';
import {
  withAccepted,
  withAcceptedPlan,
  withFitted,
  withMachineAsBefore,
  withMade,
  withOutFrom,
  withoutAddedRun,
  withRunAdded,
  withRunsAsBefore,
  withRunsFrom,
  withRunsMoved,
  withRunTold,
} from '@/lib/night/records';
import { expectOk } from '@/lib/result/result';
import { type EventRecord, eventRecordSchema } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { planNight } from '@/tests/support/plan-night';
import { BEFORE_THE_FIRST_RUN, chicago, demoRecords } from './night-case';

const before = demoRecords(BEFORE_THE_FIRST_RUN).event.value;
const jets = { mains: [420, 410, 420], trim: null };
const NOW = chicago('2027-01-16', '20:05');

describe('what a person tells the plan', () => {
  it('is kept per machine, in a record the store accepts', () => {
    const other = withFitted(before, 'another', { at: NOW, setting: { mains: [180], trim: 2 } });
    const record = withFitted(other, ID, { at: NOW, setting: jets });
    expect(record.fitted).toEqual({ another: { mains: [180], trim: 2 }, [ID]: jets });
    expect(eventRecordSchema.parse(record)).toEqual(record);
  });

  it('corrects a run that is told twice and does not count it twice', () => {
    const once = withMade(before, { machineId: ID, run: 3, setting: { mains: [400, 400, 400], trim: null } });
    const twice = withMade(once, { machineId: ID, run: 3, setting: jets });
    expect(twice.made[ID]).toEqual([{ run: 3, setting: jets }]);
  });

  it('keeps when each jet was said to be in, oldest first, and forgets what a later word sets right', () => {
    const old = { mains: [410, 400, 410], trim: null };
    const at = (clock: string) => chicago('2027-01-16', clock);
    const first = withFitted(before, ID, { at: at('19:00'), setting: old });
    const second = withFitted(first, ID, { at: at('20:05'), setting: jets });
    expect(second.fittings?.[ID]?.map(({ setting }) => setting)).toEqual([old, jets]);
    const earlier = withFitted(second, ID, { at: at('19:30'), setting: jets });
    expect(earlier.fittings?.[ID]).toEqual([
      { at: '2027-01-17T01:00:00Z', setting: old },
      { at: '2027-01-17T01:30:00Z', setting: jets },
    ]);
    expect(withMachineAsBefore(earlier, ID, first).fittings).toEqual(first.fittings);
  });

  it('of a past run is also what is in since, unless something was said of later', () => {
    const old = { mains: [400, 390, 400], trim: null };
    const at = (clock: string) => chicago('2027-01-16', clock);
    const early = withFitted(before, ID, { at: at('18:00'), setting: old });
    // Round 2 is at 19:45.
    const last = withRunTold(early, { machineId: ID, run: 1, setting: jets });
    expect(last.made[ID]).toEqual([{ run: 1, setting: jets }]);
    expect(last.fitted[ID]).toEqual(jets);
    expect(last.fittings?.[ID]?.at(-1)).toEqual({ at: '2027-01-17T01:45:00Z', setting: jets });
    expect(eventRecordSchema.parse(last)).toEqual(last);
    const fittedLater = withFitted(before, ID, { at: at('20:05'), setting: old });
    const earlier = withRunTold(fittedLater, { machineId: ID, run: 1, setting: jets });
    expect(earlier.fitted[ID]).toEqual(old);
    expect(earlier.fittings).toEqual(fittedLater.fittings);
    const madeLater = withMade(early, { machineId: ID, run: 2, setting: old });
    expect(withRunTold(madeLater, { machineId: ID, run: 1, setting: jets }).fitted[ID]).toEqual(old);
  });

  it('can be undone without touching what was said about other machines', () => {
    const now = withFitted(withAccepted(before, ID, [jets]), 'another', { at: NOW, setting: jets });
    const back = withMachineAsBefore(now, ID, before);
    expect(back.accepted).toEqual({});
    expect(back.fitted).toEqual({ another: jets });
  });

  it('gives back the very record that was, also where it knew nothing of what was told', () => {
    const out = withOutFrom(withFitted(before, ID, { at: NOW, setting: jets }), ID, NOW);
    const back = withMachineAsBefore(out, ID, before);
    expect(JSON.stringify(back)).toBe(JSON.stringify(before));
  });

  it('keeps an accepted plan through a run that is added, and gives it back without it', () => {
    const plan = before.event.runs.map((_, i) => ({ mains: [i < 4 ? 410 : 420, 400, 410], trim: null }));
    const accepted = withAccepted(before, ID, plan);
    const more = withRunAdded(accepted, ID);
    expect(more.event.runs.length).toBe(9);
    expect(more.accepted[ID]?.at(-1)).toEqual(plan.at(-1));
    expect(more.accepted[ID]?.length).toBe(9);
    expect(withoutAddedRun(more, { machineId: ID, before: accepted })).toEqual(accepted);
  });

  it('starts a run now by the time it has by then, not by the one that was shown', () => {
    const late = withRunsMoved(before, { machineId: ID, runs: [2, 3, 4, 5, 6, 7], minutes: 50 });
    const at = chicago('2027-01-16', '20:40');
    const now = withRunsFrom(late, { machineId: ID, runs: [2, 3, 4, 5, 6, 7], at });
    expect(Date.parse(now.event.runs[2]!.start)).toBe(at);
    expect(Date.parse(now.event.runs[3]!.start) - at).toBe(45 * 60_000);
  });

  it('keeps what a run was planned on once it has begun, whatever is planned afterwards', () => {
    const at = (clock: string) => chicago('2027-01-16', clock);
    const planned = (record: EventRecord, now: Instant) => {
      const { event, ...others } = demoRecords(BEFORE_THE_FIRST_RUN);
      const night = expectOk(nightFrom({ ...others, event: { ...event, value: record } }));
      return withAcceptedPlan(record, ID, expectOk(planNight(night, now)));
    };
    const first = planned(before, at('18:15'));
    const rich = { mains: [460, 460, 460], trim: null };
    const later = planned(withMade(first, { machineId: ID, run: 0, setting: rich }), at('22:20'));
    const byRun = (record: EventRecord) => new Map(record.planned?.[ID]?.map((each) => [each.run, each]));
    for (const run of [0, 1, 2, 3, 4]) expect(byRun(later).get(run)).toEqual(byRun(first).get(run));
    expect(later.accepted[ID]?.[0]).toEqual(rich);
    expect(byRun(later).size).toBe(8);
    expect(eventRecordSchema.parse(later)).toEqual(later);
    expect(withMachineAsBefore(later, ID, first).planned).toEqual(first.planned);
  });

  it('leaves the record it was given as it was', () => {
    const frozen = structuredClone(before);
    withFitted(before, ID, { at: NOW, setting: jets });
    withMade(before, { machineId: ID, run: 0, setting: jets });
    expect(before).toEqual(frozen);
  });

  it('moves the runs of the racer’s own class and leaves those of everybody where they are', () => {
    const own = before.event.runs.slice(0, 2).map((run, i) => ({ ...run, name: `Heat ${i + 1}` }));
    const record = {
      ...before,
      club: {
        classes: [{ id: 'open', name: 'Open', runs: own }],
        racers: { [ID]: { name: '', classId: 'open' } },
      },
    };
    const moved = withRunsMoved(record, { machineId: ID, runs: [1], minutes: 20 });
    expect(moved.event).toEqual(record.event);
    const [first, second] = moved.club?.classes[0]?.runs ?? [];
    expect(first).toEqual(own[0]);
    expect(Date.parse(second?.start ?? '') - Date.parse(own[1]?.start ?? '')).toBe(20 * 60_000);
    expect(withRunsAsBefore(moved, { machineId: ID, before: record })).toEqual(record);
    const others = withRunsMoved(record, { machineId: 'another', runs: [1], minutes: 20 });
    expect(others.club).toEqual(record.club);
    expect(others.event.runs[1]?.start).not.toBe(record.event.runs[1]?.start);
  });
});
