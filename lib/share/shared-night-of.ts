import type { Night } from '@/lib/night/night';
import { settingsAsGiven } from '@/lib/plan/make-plan';
import type { Plan } from '@/lib/plan/types';
import { machineTonight } from '@/lib/store/machine-tonight';
import { eventOfRacer } from '@/lib/store/racer-event';
import type { Instant } from '@/lib/time/instant';
import { makeSharedNight } from './make-shared-night';
import { withOrigin } from './origin';
import { withRoundedPlace } from './rounded-place';
import type { SharedNight } from './shared-night';

type Given = {
  readonly night: Night;
  readonly plan: Plan;
  readonly sharedAt: Instant;
  /** False: the place goes out rounded. */
  readonly exactPlace: boolean;
};

/** The night on the screen as it travels; whoever shares a plan stands by it, so it counts as accepted. */
export function sharedNightOf({ night, plan, sharedAt, exactPlace }: Given): SharedNight {
  const { event, machine, box, log } = night.records;
  const { typed } = event.value;
  const { fitted, made, outFrom } = night.request;
  const shared = makeSharedNight({
    event: eventOfRacer(event.value, machine.id),
    machines: [
      {
        machine: machineTonight(machine.value, box, log),
        fitted,
        made,
        ...(outFrom === undefined ? {} : { outFrom }),
        accepted: settingsAsGiven(plan),
      },
    ],
    series: night.series,
    hoursTyped: typed !== null && typed.hours.length > 0,
    readings: event.value.readings,
    placeOffset: night.request.placeOffset,
    sharedAt,
  });
  return withOrigin(exactPlace ? shared : withRoundedPlace(shared), night.records);
}
