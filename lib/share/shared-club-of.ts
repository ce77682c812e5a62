import type { PlannedRacer } from '@/lib/club/racer';
import type { HourSeries } from '@/lib/hours/series';
import type { ClubRecords } from '@/lib/night/club';
import { logOf } from '@/lib/night/night';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import { machineTonight } from '@/lib/store/machine-tonight';
import { eventOfRacer } from '@/lib/store/racer-event';
import type { Instant } from '@/lib/time/instant';
import { makeSharedNight } from './make-shared-night';
import { racerTold } from './racer-told';
import { withRoundedPlace } from './rounded-place';
import type { SharedClub } from './shared-club';

type Given = {
  readonly records: ClubRecords;
  /** Who has a plan; whoever shares it stands by it. */
  readonly planned: readonly PlannedRacer[];
  readonly series: HourSeries;
  readonly sharedAt: Instant;
  /** False: the place goes out rounded. */
  readonly exactPlace: boolean;
};

/** The club's night as it travels: everybody who has a plan, with the runs of his class and the plan as it stands. */
export function sharedClubOf({ records, planned, series, sharedAt, exactPlace }: Given): SharedClub {
  const { event, machines, boxes, log } = records;
  const { typed, readings, club } = event.value;
  const offset = event.value.withoutPlaceOffset === true ? undefined : records.placeOffset;
  const of = new Map(planned.map((each) => [each.racer.id, each]));
  const taking = machines.filter(({ id }) => of.has(id));
  const allRuns = [event.value.event.runs, ...(club?.classes.map(({ runs }) => runs) ?? [])].flat();
  const shared = makeSharedNight({
    event: { ...event.value.event, runs: allRuns },
    machines: taking.map(({ id, value }) => {
      const { racer, plan } = of.get(id)!;
      const box = boxes.find((each) => each.id === value.boxId)?.value ?? null;
      return {
        machine: machineTonight(value, box, logOf(log, event, id)),
        fitted: racer.fitted,
        made: racer.made,
        ...(racer.outFrom === undefined ? {} : { outFrom: racer.outFrom }),
        accepted: settingsAsGiven(plan),
        ...racerTold(event.value, id),
      };
    }),
    series,
    hoursTyped: typed !== null && typed.hours.length > 0,
    readings,
    placeOffset: offset,
    sharedAt,
  });
  const { machines: racers, ...night } = exactPlace ? shared : withRoundedPlace(shared);
  return {
    ...night,
    event: { ...night.event, runs: event.value.event.runs },
    racers: racers.map((racer, i) => {
      const { runs } = eventOfRacer(event.value, taking[i]!.id);
      return runs === event.value.event.runs ? racer : { ...racer, runs };
    }),
  };
}
