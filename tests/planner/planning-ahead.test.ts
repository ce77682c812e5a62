import { describe, expect, it } from 'vitest';
import { makePlan } from '@/lib/plan/make-plan';
import type { PlanRequest } from '@/lib/plan/types';
import type { AskedPlan, Planner } from '@/lib/planner/planner';
import { planningAhead } from '@/lib/planner/planning-ahead';
import { expectOk } from '@/lib/result/result';
import { clock, requestOf } from '@/tests/support/plan-cases';

const base = requestOf();
/** Requests of one night: with the very same hours, as `lib/night` hands them out. */
const withIn = (main: number, minutes = 0): PlanRequest => ({
  ...base,
  fitted: { mains: [main], trim: null },
  now: clock(minutes / 60),
});

type Task = {
  readonly request: PlanRequest;
  readonly answer: () => Promise<void>;
  readonly fail: () => void;
};

/** A planner that answers when it is told to. */
function heldPlanner(isApart = true) {
  const tasks: Task[] = [];
  const cancelled: PlanRequest[] = [];
  const ask = (request: PlanRequest): AskedPlan => {
    let [resolve, reject] = [(_: ReturnType<typeof makePlan>): void => undefined, (): void => undefined];
    const plan = new Promise<ReturnType<typeof makePlan>>((yes, no) => {
      [resolve, reject] = [yes, () => no(new Error('planning failed'))];
    });
    tasks.push({
      request,
      answer: async () => {
        resolve(makePlan(request));
        await plan;
      },
      fail: reject,
    });
    return { plan, cancel: () => cancelled.push(request) };
  };
  const planner: Planner = { ask, wake: () => undefined, isApart: () => isApart };
  return { planner: planningAhead(planner), tasks, cancelled };
}

/** All that follows from an answer has been done. */
const atRest = () => new Promise<void>((resolve) => setTimeout(resolve));

describe('a plan that is made ahead', () => {
  it('is known at once when it is asked for, and not made again', async () => {
    const { planner, tasks } = heldPlanner();
    void planner.ahead().plan(withIn(430));
    await tasks[0]!.answer();
    await atRest();
    // As it is asked later: another object, the same night.
    const known = planner.known(withIn(430));
    expect(expectOk(known!)).toEqual(expectOk(makePlan(withIn(430))));
    expect(await planner.ask(withIn(430)).plan).toBe(known);
    expect(tasks).toHaveLength(1);
  });

  it('is no answer to another question', async () => {
    const { planner, tasks } = heldPlanner();
    void planner.ahead().plan(withIn(430));
    await tasks[0]!.answer();
    await atRest();
    expect(planner.known(withIn(420))).toBeNull();
    expect(planner.known(withIn(430, 1))).toBeNull();
    expect(planner.known({ ...withIn(430), series: structuredClone(base.series) })).toBeNull();
    expect(planner.known({ ...withIn(430), outFrom: clock(2) })).toBeNull();
  });

  it('waits for whatever is really asked, and is made one at a time', async () => {
    const { planner, tasks } = heldPlanner();
    const real = planner.ask(withIn(410));
    const ahead = planner.ahead();
    for (const main of [420, 430]) void ahead.plan(withIn(main));
    expect(tasks.map(({ request }) => request.fitted?.mains)).toEqual([[410]]);
    await tasks[0]!.answer();
    await real.plan;
    await atRest();
    expect(tasks.map(({ request }) => request.fitted?.mains)).toEqual([[410], [420]]);
    // Asked while one is being made: it goes before the next.
    void planner.ask(withIn(400));
    await tasks[1]!.answer();
    await atRest();
    expect(tasks.map(({ request }) => request.fitted?.mains)).toEqual([[410], [420], [400]]);
    await tasks[2]!.answer();
    await atRest();
    expect(tasks.map(({ request }) => request.fitted?.mains)).toEqual([[410], [420], [400], [430]]);
  });

  it('goes on where what was really asked is called off', async () => {
    const { planner, tasks, cancelled } = heldPlanner();
    const real = planner.ask(withIn(410));
    void planner.ahead().plan(withIn(420));
    real.cancel();
    expect(cancelled).toEqual([withIn(410)]);
    expect(tasks.map(({ request }) => request.fitted?.mains)).toEqual([[410], [420]]);
  });

  it('is waited for by who asks for the very plan that has been begun, whatever becomes of the wish', async () => {
    const { planner, tasks, cancelled } = heldPlanner();
    const ahead = planner.ahead();
    void ahead.plan(withIn(430));
    const real = planner.ask(withIn(430));
    ahead.stop();
    real.cancel();
    const again = planner.ask(withIn(430));
    await tasks[0]!.answer();
    expect(expectOk(await again.plan)).toEqual(expectOk(makePlan(withIn(430))));
    expect(tasks).toHaveLength(1);
    expect(cancelled).toEqual([]);
  });

  it('is not made where it is no longer wanted, nor where the page would have to make it', async () => {
    const { planner, tasks } = heldPlanner();
    const real = planner.ask(withIn(410));
    const ahead = planner.ahead();
    void ahead.plan(withIn(420));
    ahead.stop();
    void ahead.plan(withIn(430));
    await tasks[0]!.answer();
    await real.plan;
    await atRest();
    expect(tasks).toHaveLength(1);
    const inPlace = heldPlanner(false);
    void inPlace.planner.ahead().plan(withIn(420));
    expect(inPlace.tasks).toHaveLength(0);
  });

  it('that fails is asked for anew by who needs it, and keeps back nothing', async () => {
    const { planner, tasks } = heldPlanner();
    const ahead = planner.ahead();
    const failing = ahead.plan(withIn(420));
    void ahead.plan(withIn(430));
    tasks[0]!.fail();
    await expect(failing).rejects.toThrow('planning failed');
    await atRest();
    void planner.ask(withIn(420));
    expect(tasks.map(({ request }) => request.fitted?.mains)).toEqual([[420], [430], [420]]);
  });

  it('is forgotten once eight others were asked for', async () => {
    const { planner, tasks } = heldPlanner();
    for (let minutes = 0; minutes < 9; minutes += 1) {
      void planner.ask(withIn(430, minutes));
      await tasks.at(-1)!.answer();
      await atRest();
    }
    expect(planner.known(withIn(430, 0))).toBeNull();
    expect(planner.known(withIn(430, 1))).not.toBeNull();
  });
});
