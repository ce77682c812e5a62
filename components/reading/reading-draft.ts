import { onlyUnits } from '@/components/draft/only-units';
import type { ReadingJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { Instant } from '@/lib/time/instant';
import { localClock } from '@/lib/time/zone';
import { METRIC_UNITS, type UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { numberText, pressureText, temperatureText } from '@/lib/units/entry-text';

export type ReadPressureKind = 'none' | 'station' | 'altimeter' | 'sea-level';

/** What was read at the track, as typed. */
export type ReadingDraft = {
  /** What bare numbers in this draft mean. */
  readonly units: UnitChoice;
  readonly temperature: string;
  readonly clock: string;
  readonly pressureKind: ReadPressureKind;
  readonly pressure: string;
  readonly humidity: string;
};

export const READING_SHAPE: ReadingDraft = {
  units: METRIC_UNITS,
  temperature: '',
  clock: '',
  pressureKind: 'none',
  pressure: '',
  humidity: '',
};

type Start = { readonly units: UnitChoice; readonly zone: string; readonly now: Instant };

/** A new reading is taken now until the person says otherwise. */
export function blankReading({ units, zone, now }: Start): ReadingDraft {
  return { ...READING_SHAPE, units: onlyUnits(units), clock: localClock(now, zone) };
}

/** The draft that reads back as a reading that was kept. */
export function draftOfReading(reading: ReadingJson, start: Start): ReadingDraft {
  const { pressureHpa, relativeHumidity } = reading;
  return {
    ...blankReading(start),
    temperature: temperatureText(celsiusToKelvin(reading.temperatureC), start.units),
    clock: localClock(instantFromJson(reading.time), start.zone),
    pressureKind: pressureHpa === undefined ? 'none' : 'station',
    pressure: pressureHpa === undefined ? '' : pressureText(hectopascalToPascal(pressureHpa), start.units),
    humidity: relativeHumidity === undefined ? '' : numberText(relativeHumidity * 100, 1),
  };
}

const LABELS: Readonly<Record<string, string>> = {
  temperature: 'Temperature',
  clock: 'Time',
  pressureKind: 'Pressure read',
  pressure: 'Pressure',
  humidity: 'Humidity',
};

export function readingLabel(name: string): string {
  return LABELS[name] ?? name;
}
