import type { Machine } from '@/lib/carb/machine';
import type { SettingJson } from '@/lib/contract/event';
import { settingOf, settingProblems } from '@/lib/contract/setting-problems';
import type { PlanRequest } from '@/lib/plan/types';
import type { EventRecord } from '@/lib/store/records';

type Told = Pick<PlanRequest, 'fitted' | 'made' | 'accepted'>;
type About = { readonly machineId: string; readonly machine: Machine; readonly runs: number };

/** What was said about this machine tonight, as far as it still fits the machine and the runs as they are now. */
export function toldAbout(event: EventRecord, { machineId: id, machine, runs }: About): Told {
  const { fitted, made, accepted } = event;
  const fits = (setting: SettingJson) => settingProblems(setting, machine, []).length === 0;
  const inEngine = fitted[id];
  const plan = accepted[id];
  return {
    fitted: inEngine !== undefined && fits(inEngine) ? settingOf(inEngine, machine) : null,
    made: (made[id] ?? [])
      .filter(({ run, setting }) => run < runs && fits(setting))
      .map(({ run, setting }) => ({ run, setting: settingOf(setting, machine) })),
    accepted:
      plan !== undefined && plan.length === runs && plan.every(fits)
        ? plan.map((setting) => settingOf(setting, machine))
        : null,
  };
}
