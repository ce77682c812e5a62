import type { Setting } from '@/lib/carb/machine';
import { sameSetting } from '@/lib/carb/same-setting';
import { completeSetting } from '@/lib/plan/situation';
import type { Plan, PlanRequest, RunPlan } from '@/lib/plan/types';

/** What a past run of which nobody said anything may have been made on. */
export type PastRunChoices = {
  /** What was last said to be in before it; the baseline where nobody said anything. */
  readonly said: Setting;
  /** What the accepted plan had in, where that is something else. */
  readonly accepted: Setting | null;
};

type Asked = Pick<PlanRequest, 'machine' | 'accepted'>;

/** null where the run needs no question: somebody said what it was made on, or it is still to come. */
export function pastRunChoices(
  { machine, accepted }: Asked,
  { order }: Pick<Plan, 'order'>,
  { run, state, setting }: Pick<RunPlan, 'run' | 'state' | 'setting'>,
): PastRunChoices | null {
  if (state !== 'past') return null;
  const given = accepted?.[order[run]!];
  const planned = given === undefined ? null : completeSetting(machine, given);
  return { said: setting, accepted: planned === null || sameSetting(planned, setting) ? null : planned };
}
