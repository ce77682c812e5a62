import { READING_PRESSURE_SD, READING_TEMPERATURE_SD } from '@/lib/plan/judgement';
import type { Reading, Run } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import { readInstant } from '@/lib/time/zone';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { ratio } from '@/lib/units/quantity';
import type { EventJson, ReadingJson } from './event';

/** A time the schema has already accepted. */
export function instantFromJson(time: string): Instant {
  return expectOk(readInstant(time));
}

/** The runs in the order they were given; the planner sorts them. */
export function runsFromEvent(event: Pick<EventJson, 'runs'>): readonly Run[] {
  return event.runs.map((run) => ({
    name: run.name,
    start: instantFromJson(run.start),
    end: instantFromJson(run.end),
    weight: run.weight,
    typicalSeconds: run.typicalSeconds ?? null,
  }));
}

/** `index` names the reading where it carries no id of its own. */
export function readingFromJson(json: ReadingJson, index: number): Reading {
  return {
    id: json.id ?? String(index + 1),
    at: instantFromJson(json.time),
    temperature: celsiusToKelvin(json.temperatureC),
    stationPressure: json.pressureHpa === undefined ? null : hectopascalToPascal(json.pressureHpa),
    relativeHumidity: json.relativeHumidity === undefined ? null : ratio(json.relativeHumidity),
    confirmed: json.confirmed,
    ...(json.from === undefined ? {} : { from: json.from }),
    ...sdOf(json),
  };
}

/** Where only one of the two is told, the other is an instrument's at the track. */
function sdOf({ temperatureSdK, pressureSdHpa }: ReadingJson): Pick<Reading, 'sd'> {
  if (temperatureSdK === undefined && pressureSdHpa === undefined) return {};
  return {
    sd: {
      temperature: temperatureSdK ?? READING_TEMPERATURE_SD,
      pressure: pressureSdHpa === undefined ? READING_PRESSURE_SD : hectopascalToPascal(pressureSdHpa),
    },
  };
}
