import { instantFromJson } from '@/lib/contract/event-from-json';
import { seriesFromJson } from '@/lib/contract/series-from-json';
import { skyToJson } from '@/lib/contract/sky';
import { pathPart } from '@/lib/store/leaves';
import type { EventRecord, ForecastRecord, MachineRecord } from '@/lib/store/records';
import type { Trace } from '@/lib/store/trace-schema';
import { isoUtc } from '@/lib/time/zone';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { plainNumber } from '@/lib/units/format';
import { tracePlaced } from './origin';
import type { SharedMachine, SharedNight } from './shared-night';
import { sameName, toldApart } from './told-apart';

export type KeptRecord<V> = { readonly id: string; readonly value: V; readonly trace?: Trace };

/** The new records of a night that is kept; nothing that was there before is among them. */
export type KeptNight = {
  readonly event: KeptRecord<EventRecord>;
  readonly machines: readonly KeptRecord<MachineRecord>[];
  readonly forecast: KeptRecord<ForecastRecord> | null;
};

/**
 * A shared night as records of one's own, under the ids it came with, so that what is sent back finds its way.
 * `newId` gives another key each time it is asked.
 */
export function keptNight(night: SharedNight, newId: () => string): KeptNight {
  const machines = night.machines.map((shared) => ({ id: shared.id ?? newId(), shared }));
  const forecast = forecastRecord(night);
  const forecastId = forecast === null ? null : newId();
  const parts = machines.map(({ id }) => pathPart(id));
  const each = <V>(pick: (machine: SharedMachine) => V | undefined): Record<string, V> =>
    Object.fromEntries(
      machines.flatMap(({ id, shared }) => {
        const value = pick(shared);
        return value === undefined ? [] : [[id, value]];
      }),
    );
  return {
    machines: machines.map(({ id, shared }) => ({
      id,
      value: machineRecord(shared),
      ...traceOf(shared.trace),
    })),
    forecast: forecast === null || forecastId === null ? null : { id: forecastId, value: forecast },
    event: {
      id: night.id ?? newId(),
      ...traceOf(night.trace === undefined ? undefined : tracePlaced(night.trace, parts)),
      value: {
        event: night.event,
        machineIds: machines.map(({ id }) => id),
        typed:
          forecast !== null || night.hours.length === 0
            ? null
            : { hours: [...night.hours], pressure: { kind: 'standard' }, relativeHumidity: 0.8 },
        forecastId,
        readings: night.readings,
        ...(night.placeOffset === undefined ? {} : { placeOffset: night.placeOffset }),
        accepted: each(({ accepted }) => accepted),
        fitted: each(({ fitted }) => fitted),
        fittings: each(({ fitted }) =>
          fitted === undefined ? undefined : [{ at: night.sharedAt, setting: fitted }],
        ),
        made: each(({ made }) => made),
        outFrom: each(({ outFrom }) => outFrom),
        demo: false,
        ...racersTold(machines),
      },
    },
  };
}

const traceOf = (trace: Trace | undefined) => (trace === undefined ? {} : { trace });

type Shared = { readonly id: string; readonly shared: SharedMachine };

/** Names at the event, where machines that travelled together are called the same. */
function racersTold(machines: readonly Shared[]): Pick<EventRecord, 'club'> {
  const names = machines.map(({ shared }) => shared.machine.name);
  const apart = toldApart(names);
  const racers = machines.flatMap(({ id }, i) =>
    apart[i] === names[i] ? [] : [[id, { name: apart[i] ?? '', classId: null }] as const],
  );
  return racers.length === 0 ? {} : { club: { classes: [], racers: Object.fromEntries(racers) } };
}

/** Whether a night of this name with these starts is among one's own events: kept before, or shared from here. */
export function isHere(night: SharedNight, events: readonly { readonly value: EventRecord }[]): boolean {
  const startsOf = ({ runs }: SharedNight['event']) => runs.map(({ start }) => instantFromJson(start)).join();
  return events.some(
    ({ value: { event, demo } }) =>
      !demo &&
      sameName(event.name) === sameName(night.event.name) &&
      startsOf(event) === startsOf(night.event),
  );
}

function machineRecord({ machine }: SharedMachine): MachineRecord {
  return {
    machine,
    baselines: [],
    activeBaselineId: null,
    boxId: null,
    hardware: [],
    chart: [],
    toBeReproven: false,
  };
}

/** Hours that came from a forecast, kept as one, so that a newer one can take their place; null for typed hours. */
function forecastRecord({ event, hours, hoursTyped, sharedAt }: SharedNight): ForecastRecord | null {
  if (hoursTyped === true || event.place === undefined || hours.length === 0) return null;
  const series = seriesFromJson(hours, event.elevationM);
  if (!series.ok) return null;
  const { place, elevationM } = event;
  return {
    place,
    forecast: {
      latitude: place.latitude,
      longitude: place.longitude,
      elevationM,
      modelElevationM: null,
      name: 'Shared with the night',
      attribution: '',
      attributionUrl: null,
      issuedAt: sharedAt,
      fetchedAt: sharedAt,
      hours: series.value.hours.map((hour) => ({
        time: isoUtc(hour.at),
        temperatureC: plainNumber(kelvinToCelsius(hour.temperature), 2),
        pressureHpa: plainNumber(pascalToHectopascal(hour.pressure), 2),
        pressureFrom: hour.pressureFrom,
        relativeHumidity: plainNumber(hour.relativeHumidity, 4),
        spreadK: null,
        origin: 'forecast',
        ...skyToJson(hour),
      })),
    },
  };
}
