import type { Setting } from '@/lib/carb/machine';
import type { Plan, RunPlan, Swap } from './types';

/** A swap as two plans are compared by it. */
export type SwapAct = Pick<Swap, 'beforeRun' | 'from' | 'to' | 'windowStart'>;

/** What two plans are compared by; less than a plan, so that one known only by its settings can be compared too. */
export type ComparedPlan = Pick<Plan, 'sortedRuns'> & {
  readonly runs: readonly Pick<RunPlan, 'run' | 'setting' | 'air' | 'state'>[];
  readonly swaps: readonly SwapAct[];
};

/** What changed between two plans, act by act. */
export type PlanChange =
  | { readonly code: 'start-changed'; readonly from: Setting; readonly to: Setting }
  | { readonly code: 'swap-moved'; readonly from: SwapAct; readonly to: SwapAct; readonly colder: number }
  | { readonly code: 'swap-added'; readonly swap: SwapAct; readonly colder: number }
  | { readonly code: 'swap-dropped'; readonly swap: SwapAct; readonly colder: number }
  | {
      readonly code: 'swap-target-changed';
      readonly from: SwapAct;
      readonly to: SwapAct;
      readonly colder: number;
    };

/** Empty `changes`: the acts are the same. `colder` [K] is old minus new mean temperature at the act. */
export type PlanDifference = { readonly changes: readonly PlanChange[]; readonly nextActChanged: boolean };
