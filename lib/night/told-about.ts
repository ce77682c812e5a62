import type { Machine } from '@/lib/carb/machine';
import type { SettingJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { settingOf, settingProblems } from '@/lib/contract/setting-problems';
import type { PlanRequest } from '@/lib/plan/types';
import type { EventRecord } from '@/lib/store/records';
import { type Instant, instant } from '@/lib/time/instant';

/** What somebody said of one machine's night. */
export type Told = Pick<PlanRequest, 'fitted' | 'made' | 'accepted' | 'outFrom'> & {
  readonly fittings: NonNullable<PlanRequest['fittings']>;
};
type About = { readonly machineId: string; readonly machine: Machine; readonly runs: number };

/** What was said about this machine tonight, as far as it still fits the machine and the runs as they are now. */
export function toldAbout(event: EventRecord, { machineId: id, machine, runs }: About): Told {
  const { fitted, fittings, made, accepted, outFrom } = event;
  const out = outFrom?.[id];
  const fits = (setting: SettingJson) => settingProblems(setting, machine, []).length === 0;
  const inEngine = fitted[id];
  const plan = accepted[id];
  return {
    fitted: inEngine !== undefined && fits(inEngine) ? settingOf(inEngine, machine) : null,
    fittings: fittingsOf(inEngine, fittings?.[id])
      .filter(({ setting }) => fits(setting))
      .map(({ at, setting }) => ({ at, setting: settingOf(setting, machine) })),
    ...(out === undefined ? {} : { outFrom: instantFromJson(out) }),
    made: (made[id] ?? [])
      .filter(({ run, setting }) => run < runs && fits(setting))
      .map(({ run, setting }) => ({ run, setting: settingOf(setting, machine) })),
    accepted:
      plan !== undefined && plan.length === runs && plan.every(fits)
        ? plan.map((setting) => settingOf(setting, machine))
        : null,
  };
}

type Said = { readonly at: Instant; readonly setting: SettingJson };

/** All that was said of what is in, oldest first; what was said before times were kept comes before everything. */
function fittingsOf(
  inEngine: SettingJson | undefined,
  fittings: NonNullable<EventRecord['fittings']>[string] | undefined,
): readonly Said[] {
  if (fittings === undefined) return inEngine === undefined ? [] : [{ at: instant(0), setting: inEngine }];
  return fittings
    .map(({ at, setting }) => ({ at: instantFromJson(at), setting }))
    .sort((a, b) => a.at - b.at);
}
