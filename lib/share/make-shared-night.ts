import { pressureDoubt } from '@/lib/air/pressure-doubt';
import type { Setting } from '@/lib/carb/machine';
import type { EventJson, HourJson, ReadingJson, SettingJson } from '@/lib/contract/event';
import { instantFromJson, runsFromEvent } from '@/lib/contract/event-from-json';
import type { MachineJson } from '@/lib/contract/machine';
import { placeOffsetToJson } from '@/lib/contract/place-offset';
import { type SkyJson, skyToJson } from '@/lib/contract/sky';
import { pressureOriginOf } from '@/lib/hours/provenance';
import type { Hour, HourSeries } from '@/lib/hours/series';
import type { PlaceOffset } from '@/lib/plan/place-offset';
import type { MadeRun } from '@/lib/plan/types';
import { HOUR_MS, type Instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { plainNumber } from '@/lib/units/format';
import type { Metre } from '@/lib/units/quantity';
import { MOST_HOURS, type SharedMachine, type SharedNight } from './shared-night';

/** What one machine takes along. Settings are in the order of the event's runs. */
export type MachineToShare = {
  readonly machine: MachineJson;
  /** null: not told. */
  readonly fitted: Setting | null;
  readonly made: readonly MadeRun[];
  /** Absent: it is not out. */
  readonly outFrom?: Instant;
  /** The plan as it stands when the night is shared. */
  readonly accepted: readonly Setting[] | null;
};

export type NightToShare = {
  readonly event: EventJson;
  readonly machines: readonly MachineToShare[];
  readonly series: HourSeries;
  /** True where a person typed hours of their own. */
  readonly hoursTyped: boolean;
  readonly readings: readonly ReadingJson[];
  /** What the plan counts on of the place's own; absent: nothing. */
  readonly placeOffset?: PlaceOffset | undefined;
  readonly sharedAt: Instant;
};

const MOST_READINGS = 100;
/** Hours on either side of the runs and readings that are worth the room. */
const MARGIN_MS = 2 * HOUR_MS;

/** A night as it travels, with the hours around its runs and readings and no others. */
export function makeSharedNight(given: NightToShare): SharedNight {
  const readings = given.readings.slice(-MOST_READINGS);
  return {
    event: given.event,
    machines: given.machines.map(sharedMachine),
    hours: hoursAround(given, readings)
      .slice(0, MOST_HOURS)
      .map((hour) => hourToJson(hour, given.series.elevation)),
    ...(given.hoursTyped ? { hoursTyped: true } : {}),
    readings,
    ...(given.placeOffset === undefined ? {} : { placeOffset: placeOffsetToJson(given.placeOffset) }),
    sharedAt: isoUtc(given.sharedAt),
  };
}

function sharedMachine({ machine, fitted, made, outFrom, accepted }: MachineToShare): SharedMachine {
  return {
    machine,
    ...(fitted === null ? {} : { fitted: settingToJson(fitted) }),
    ...(outFrom === undefined ? {} : { outFrom: isoUtc(outFrom) }),
    ...(accepted === null ? {} : { accepted: accepted.map(settingToJson) }),
    ...(made.length === 0
      ? {}
      : { made: made.map(({ run, setting }) => ({ run, setting: settingToJson(setting) })) }),
  };
}

function settingToJson({ mains, trim }: Setting): SettingJson {
  return { mains: [...mains], trim };
}

function hoursAround({ event, series }: NightToShare, readings: readonly ReadingJson[]): readonly Hour[] {
  const times = [
    ...runsFromEvent(event).flatMap(({ start, end }) => [start, end]),
    ...readings.map(({ time }) => instantFromJson(time)),
  ];
  const [first, last] = [Math.min(...times) - MARGIN_MS, Math.max(...times) + MARGIN_MS];
  return series.hours.filter(({ at }) => at >= first && at <= last);
}

/** To a hundredth of a kelvin, a tenth of a hectopascal and a hundredth of humidity: together at most 0.03 % of density. */
function hourToJson(hour: Hour, elevation: Metre): HourJson {
  const { at, temperature, pressure, pressureFrom, relativeHumidity, rawModel } = hour;
  return {
    time: isoUtc(at),
    temperatureC: plainNumber(kelvinToCelsius(temperature), 2),
    // An estimate travels as one: without a number it is estimated again where it arrives.
    ...(pressureFrom === 'standard' ? {} : { pressureHpa: plainNumber(pascalToHectopascal(pressure), 1) }),
    relativeHumidity: plainNumber(relativeHumidity, 2),
    ...(isOddButKnown(hour, elevation) ? { pressureConfirmed: true } : {}),
    // Who made it says how sure it is; of an official forecast the sky says nothing.
    ...(rawModel === false ? { rawModel } : shortSky(hour)),
  };
}

/** The sky in as few digits as it counts in: tenths of cloud, whole metres a second, centimetres of snow. */
function shortSky(hour: Hour): SkyJson {
  const { cloudCover, windMs, snowDepthM, daylight, ...maker } = skyToJson(hour);
  return {
    ...maker,
    ...(cloudCover === undefined ? {} : { cloudCover: plainNumber(cloudCover, 1) }),
    ...(windMs === undefined ? {} : { windMs: plainNumber(windMs, 0) }),
    ...(snowDepthM === undefined ? {} : { snowDepthM: plainNumber(snowDepthM, 2) }),
    ...(daylight === true ? { daylight } : {}),
  };
}

/** A pressure that would be asked about where it arrives, but is known here: a service's, or one that was stood by. */
function isOddButKnown(hour: Hour, elevation: Metre): boolean {
  const { pressureFrom, pressureConfirmed } = hour;
  const origin = pressureOriginOf(hour);
  const typed = origin === 'typed' || origin === 'between';
  const known = !typed || pressureFrom !== 'station' || pressureConfirmed === true;
  return (
    known &&
    pressureFrom !== 'standard' &&
    pressureDoubt({ ...hour, pressureFrom: 'station' }, elevation) !== null
  );
}
