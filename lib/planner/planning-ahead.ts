import type { PlanRequest } from '@/lib/plan/types';
import { keptPlans, type Planned } from './kept-plans';
import type { AskedPlan, Planner } from './planner';

/** Plans for somebody who may ask. Where nobody wants it any more, or there is no worker to do it, a plan never comes. */
export type Ahead = {
  readonly plan: (request: PlanRequest) => Promise<Planned>;
  readonly stop: () => void;
};

export type AheadPlanner = Pick<Planner, 'ask' | 'wake'> & {
  /** The plan, where it was made lately: then nobody has to wait for it. */
  readonly known: (request: PlanRequest) => Planned | null;
  /** Plans what may be asked next, so that it is known by then. */
  readonly ahead: () => Ahead;
};

type Wish = {
  readonly request: PlanRequest;
  readonly by: symbol;
  readonly grant: (plan: Promise<Planned>) => void;
};

/**
 * A planner that keeps its last answers, and plans ahead in its worker while that has nothing else to do, one plan at a
 * time: whoever really asks waits at most for the one that has been begun, and where that is the very plan, for no other.
 */
export function planningAhead(planner: Planner): AheadPlanner {
  const kept = keptPlans();
  /** What the worker is at, asked for or ahead. */
  const asked = new Set<AskedPlan>();
  let wishes: readonly Wish[] = [];

  function goOn(): void {
    const [wish, ...later] = wishes;
    if (wish === undefined || asked.size > 0 || !planner.isApart()) return;
    wishes = later;
    wish.grant(kept.answer(wish.request) ?? begun(wish.request));
    goOn();
  }

  /** Nothing is begun ahead until it has come or was called off, which is what is handed back. */
  function wait(one: AskedPlan): () => void {
    const end = (): void => {
      if (asked.delete(one)) goOn();
    };
    asked.add(one);
    one.plan.then(end, end);
    return end;
  }

  /** What is begun comes to its end, whether or not it is still wanted then. */
  function begun(request: PlanRequest): Promise<Planned> {
    const one = planner.ask(request);
    kept.expect(request, one.plan);
    wait(one);
    return one.plan;
  }

  function ask(request: PlanRequest): AskedPlan {
    const answer = kept.answer(request);
    if (answer !== null) return { plan: answer, cancel: () => undefined };
    const one = planner.ask(request);
    one.plan.then(
      (plan) => kept.keep(request, plan),
      () => undefined,
    );
    const end = wait(one);
    const cancel = (): void => {
      one.cancel();
      end();
    };
    return { plan: one.plan, cancel };
  }

  const add = (wish: Wish): void => {
    wishes = [...wishes, wish];
    goOn();
  };
  const forget = (by: symbol): void => {
    wishes = wishes.filter((wish) => wish.by !== by);
  };
  return { wake: planner.wake, ask, known: kept.plan, ahead: () => wisher(add, forget) };
}

/** Somebody who wishes for plans, until that is stopped. */
function wisher(add: (wish: Wish) => void, forget: (by: symbol) => void): Ahead {
  const by = Symbol('by');
  let isWanted = true;
  return {
    plan: (request) =>
      new Promise((grant) => {
        if (isWanted) add({ request, by, grant });
      }),
    stop: () => {
      isWanted = false;
      forget(by);
    },
  };
}
