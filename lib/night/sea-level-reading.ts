import { stationFromSeaLevel } from '@/lib/air/pressure';
import { ASSUMED_RELATIVE_HUMIDITY } from '@/lib/contract/air-from-json';
import type { ReadingJson } from '@/lib/contract/event';
import type { Plan } from '@/lib/plan/types';
import { celsiusToKelvin, hectopascalToPascal, pascalToHectopascal } from '@/lib/units/convert';
import { ratio } from '@/lib/units/quantity';
import type { Night } from './night';

/** Whether the plan takes a reading's pressure for a sea-level number. */
export function seaLevelMeant({ plan }: { readonly plan: Plan }, id: string): boolean {
  return plan.warnings.some(
    (warning) =>
      warning.code === 'reading-pressure-in-doubt' &&
      warning.readingId === id &&
      warning.doubt.likely === 'sea-level',
  );
}

/** The reading with its pressure taken as a sea-level number: kept as the station pressure that stands for. */
export function asSeaLevel(
  reading: ReadingJson,
  { night }: { readonly night: Pick<Night, 'series'> },
): ReadingJson {
  const { pressureHpa, temperatureC, relativeHumidity = ASSUMED_RELATIVE_HUMIDITY } = reading;
  if (pressureHpa === undefined) return reading;
  const station = stationFromSeaLevel(hectopascalToPascal(pressureHpa), {
    elevation: night.series.elevation,
    temperature: celsiusToKelvin(temperatureC),
    relativeHumidity: ratio(relativeHumidity),
  });
  return { ...reading, pressureHpa: pascalToHectopascal(station) };
}
