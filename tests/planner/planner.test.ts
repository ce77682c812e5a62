import { describe, expect, it, vi } from 'vitest';
import { makePlan } from '@/lib/plan/make-plan';
import type { PlanRequest } from '@/lib/plan/types';
import { createPlanner, type PlanningWorker } from '@/lib/planner/planner';
import { answerTasks, type PlannerReply, type PlannerTask, type TaskScope } from '@/lib/planner/tasks';
import { expectOk } from '@/lib/result/result';
import { instant } from '@/lib/time/instant';
import { clock, machineOf, requestOf } from '@/tests/support/plan-cases';

/** A request of its own for each time it is asked at. */
const asked = (minutes: number): PlanRequest => ({
  ...requestOf({ machine: machineOf({}) }),
  now: clock(minutes / 60),
});

type Line = {
  readonly worker: PlanningWorker;
  readonly tasks: PlannerTask[];
  readonly replies: PlannerReply[];
};

/** A worker as a browser has one: its own program behind a line that copies what goes through it. */
function workerLine(): Line {
  const tasks: PlannerTask[] = [];
  const replies: PlannerReply[] = [];
  let hearTask: Parameters<TaskScope['addEventListener']>[1] = () => undefined;
  let hearReply: (reply: PlannerReply) => void = () => undefined;
  answerTasks({
    addEventListener: (_, hear) => {
      hearTask = hear;
    },
    postMessage: (reply) => {
      const copy = structuredClone(reply);
      replies.push(copy);
      queueMicrotask(() => hearReply(copy));
    },
  });
  const worker: PlanningWorker = {
    send: (task) => {
      const copy = structuredClone(task);
      tasks.push(copy);
      hearTask({ data: copy });
    },
    listen: (hear) => {
      hearReply = hear;
    },
    end: () => undefined,
  };
  return { worker, tasks, replies };
}

/** One that never says anything, and what becomes of it. */
function silentWorker() {
  const told = { ended: 0, fail: (): void => undefined };
  const worker: PlanningWorker = {
    send: () => undefined,
    listen: (_, fail) => {
      told.fail = fail;
    },
    end: () => {
      told.ended += 1;
    },
  };
  return { worker, told };
}

describe('a plan that is made apart', () => {
  it('is the same plan as in place, crossings and all', async () => {
    const { worker, replies } = workerLine();
    const planner = createPlanner(() => worker);
    const request = asked(0);
    const inPlace = expectOk(makePlan(request));
    expect(expectOk(await planner.ask(request).plan)).toEqual({ ...inPlace, crossings: inPlace.crossings });
    expect(replies).toHaveLength(1);
  });

  it('goes to who asked for it, in whatever order they asked', async () => {
    const { worker } = workerLine();
    const planner = createPlanner(() => worker);
    const [early, late] = [asked(0), asked(45)];
    const plans = await Promise.all([planner.ask(late).plan, planner.ask(early).plan]);
    expect(plans.map((plan) => expectOk(plan).swaps)).toEqual(
      [late, early].map((request) => expectOk(makePlan(request)).swaps),
    );
  });

  it('is not made where nobody wants it any more', async () => {
    const { worker, replies } = workerLine();
    const planner = createPlanner(() => worker);
    const stale = Array.from({ length: 9 }, (_, i) => planner.ask(asked(i)));
    for (const { cancel } of stale) cancel();
    await planner.ask(asked(20)).plan;
    expect(replies.map(({ number }) => number)).toEqual([10]);
  });

  it('says why there is none, as in place', async () => {
    const { worker } = workerLine();
    const none = { ...asked(0), runs: [] };
    expect(await createPlanner(() => worker).ask(none).plan).toEqual(makePlan(none));
  });
});

describe('where no worker can plan', () => {
  const request = asked(0);
  const inPlace = expectOk(makePlan(request));

  it.each([
    ['there is none', () => null],
    [
      'a policy forbids it',
      () => {
        throw new DOMException('no', 'SecurityError');
      },
    ],
    [
      'it takes no messages',
      () => ({
        ...silentWorker().worker,
        send: () => {
          throw new DOMException('no', 'DataCloneError');
        },
      }),
    ],
  ])('the page plans the same in place: %s', async (_, open) => {
    expect(expectOk(await createPlanner(open).ask(request).plan)).toEqual(inPlace);
  });

  it('what it was asked before it failed is planned in place, and all that follows', async () => {
    const { worker, told } = silentWorker();
    const planner = createPlanner(() => worker);
    const first = planner.ask(request).plan;
    told.fail();
    expect(expectOk(await first)).toEqual(inPlace);
    expect(expectOk(await planner.ask(request).plan)).toEqual(inPlace);
    expect(told.ended).toBe(1);
  });

  it('one that says nothing for ten seconds is given up', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const { worker, told } = silentWorker();
    const plan = createPlanner(() => worker).ask(request).plan;
    vi.advanceTimersByTime(9_999);
    expect(told.ended).toBe(0);
    vi.advanceTimersByTime(1);
    vi.useRealTimers();
    expect(expectOk(await plan)).toEqual(inPlace);
  });

  it('a fault of planning is the fault that planning in place has', async () => {
    const { worker } = workerLine();
    const odd = { ...request, now: instant(0), runs: [undefined as never] };
    await expect(createPlanner(() => worker).ask(odd).plan).rejects.toThrow(TypeError);
  });
});
