import { describe, expect, it } from 'vitest';
import { briefingSteps } from '@/lib/club/briefing';
import { clubRequests } from '@/lib/club/requests';
import { makePlan } from '@/lib/plan/make-plan';
import { makeBriefing } from '@/tests/support/make-briefing';
import { DUSK, machineOf, runsOf } from '@/tests/support/plan-cases';
import { boxOf, clubNight, racerOf } from './club-cases';

const early = runsOf({ first: 18, every: 60, count: 6 });
const late = runsOf({ first: 21, every: 45, count: 6 });

describe('a briefing', () => {
  it('gives each racer the very plan the racer would get alone', () => {
    const racers = [
      racerOf({ id: 'a' }),
      racerOf({ id: 'b', runs: late }),
      racerOf({ id: 'c', runs: [...early], machine: machineOf({ carburettors: [{ main: 400 }] }) }),
    ];
    const night = clubNight();
    const { planned } = makeBriefing(racers, night);
    expect(planned.map(({ racer }) => racer.id)).toEqual(['a', 'b', 'c']);
    for (const { racer, plan } of planned) {
      const { machine, runs, fitted, made, accepted } = racer;
      const alone = makePlan({ ...night, machine, runs, fitted, made, accepted });
      expect(alone).toEqual({ ok: true, value: plan });
    }
  });

  it('yields after every racer, and comes to the same end however it is driven', () => {
    const racers = ['a', 'b', 'c', 'd'].map((id) => racerOf({ id }));
    const steps = briefingSteps(racers, clubNight());
    let count = 0;
    let step = steps.next();
    for (; !step.done; step = steps.next()) count += 1;
    expect(count).toBe(racers.length);
    expect(step.value).toEqual(makeBriefing(racers, clubNight()));
  });

  it('names a racer who cannot be planned and plans the others', () => {
    const bare = racerOf({ id: 'bare', machine: machineOf({ box: [] }) });
    const { planned, unplanned } = makeBriefing([bare, racerOf({ id: 'a' })], clubNight());
    expect(planned.map(({ racer }) => racer.id)).toEqual(['a']);
    expect(unplanned).toEqual([{ racer: bare, problem: { code: 'empty-box' } }]);
  });

  it('hands racers with equal runs one list, so that the weather is worked out once for them', () => {
    const requests = clubRequests(
      [racerOf({ id: 'a' }), racerOf({ id: 'b', runs: [...early] }), racerOf({ id: 'c', runs: late })],
      clubNight(),
    );
    expect(requests[1]?.runs).toBe(requests[0]?.runs);
    expect(requests[2]?.runs).not.toBe(requests[0]?.runs);
  });

  it('does not change what it was given', () => {
    const racers = [
      racerOf({ id: 'a', machine: machineOf({ box: boxOf([380, 390, 400, 410]) }) }),
      racerOf({ id: 'b', machine: machineOf({ box: boxOf([410, 420, 430, 440, 450], 3) }) }),
    ];
    const before = structuredClone(racers);
    makeBriefing(racers, clubNight());
    expect(racers).toEqual(before);
  });

  it('lists every act of every racer once, in the order of time', () => {
    const racers = [racerOf({ id: 'a' }), racerOf({ id: 'b', runs: late }), racerOf({ id: 'c' })];
    const { acts, planned } = makeBriefing(racers, clubNight({ now: DUSK }));
    const times = acts.map(({ at }) => at);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
    expect(acts.length).toBeGreaterThan(2);
    for (const { racer, plan } of planned)
      expect(acts.filter(({ racerId }) => racerId === racer.id).map(({ swap }) => swap)).toEqual(plan.swaps);
  });

  it('tells an act before the first run by its end, and one between runs by the start of the gap', () => {
    const { acts, planned } = makeBriefing([racerOf({ id: 'a' })], clubNight());
    const plan = planned[0]!.plan;
    for (const act of acts) {
      const before = plan.sortedRuns[act.swap.beforeRun - 1];
      expect(act.beforeFirst).toBe(before === undefined);
      expect(act.at).toBe(before === undefined ? act.swap.latestStart : before.end);
    }
  });
});
