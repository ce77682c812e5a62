import { type FieldErrors, fieldReader } from '@/components/draft/field-reader';
import type { PressureGiven } from '@/lib/air/air';
import { airFrom } from '@/lib/air/air-from';
import { ASSUMED_RELATIVE_HUMIDITY } from '@/lib/contract/air-from-json';
import type { Condition } from '@/lib/trail/season';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { type Metre, metre, ratio } from '@/lib/units/quantity';
import { airProblemSentence } from '@/lib/words/air-problems';
import type { ConditionDraft, TrailDraft } from './trail-draft';

export type SeasonsReading = {
  readonly conditions: readonly Condition[];
  readonly elevation: Metre | null;
  readonly errors: FieldErrors;
};

/** The conditions that can be used, and what is wrong with the others. */
export function readSeasons(draft: Pick<TrailDraft, 'units' | 'elevation' | 'conditions'>): SeasonsReading {
  const { units } = draft;
  const fields = fieldReader(units);
  const height = fields.elevationM({ name: 'elevation', text: draft.elevation, example: '900' });
  const elevation = height === undefined ? null : metre(height);
  const conditions = draft.conditions.flatMap((each, i) => {
    const name = `conditions.${i}.temperature`;
    if (each.temperature.trim() === '') return [];
    const celsius = fields.temperatureC({ name, text: each.temperature, example: '-12.5' });
    const pressure = pressureOf(each, elevation);
    if (celsius === undefined || pressure === null) return [];
    const air = airFrom({
      temperature: celsiusToKelvin(celsius),
      pressure,
      humidity: { kind: 'relative', value: humidityOf(each) },
    });
    if (air.ok) return [{ name: each.name.trim() || `Condition ${i + 1}`, air: air.value }];
    fields.complain(
      air.reason.code === 'temperature-out-of-range' ? name : 'elevation',
      airProblemSentence(air.reason, units),
    );
    return [];
  });
  return { conditions, elevation, errors: fields.errors() };
}

function pressureOf({ stationHpa }: ConditionDraft, elevation: Metre | null): PressureGiven | null {
  if (stationHpa !== '') return { kind: 'station', pressure: hectopascalToPascal(Number(stationHpa)) };
  return elevation === null ? null : { kind: 'standard', elevation };
}

function humidityOf({ humidity }: ConditionDraft) {
  return ratio(humidity === '' ? ASSUMED_RELATIVE_HUMIDITY : Math.min(1, Number(humidity) / 100));
}
