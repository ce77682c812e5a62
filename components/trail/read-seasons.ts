import type { PressureGiven } from '@/lib/air/air';
import { airFrom } from '@/lib/air/air-from';
import { ASSUMED_RELATIVE_HUMIDITY } from '@/lib/contract/air-from-json';
import { type FieldErrors, fieldReader } from '@/lib/fields/field-reader';
import { readNumberRow } from '@/lib/fields/table-values';
import { CONDITION, type ConditionDraft, TRAIL, type TrailDraft } from '@/lib/fields/trail/trail-rows';
import type { Condition } from '@/lib/trail/season';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { type Metre, metre, type Ratio, ratio } from '@/lib/units/quantity';
import { airProblemSentence } from '@/lib/words/air-problems';

export type SeasonsReading = {
  readonly conditions: readonly Condition[];
  readonly elevation: Metre | null;
  readonly errors: FieldErrors;
};

/** The conditions that can be used, and what is wrong with the others. */
export function readSeasons(draft: Pick<TrailDraft, 'units' | 'elevation' | 'conditions'>): SeasonsReading {
  const { units } = draft;
  const fields = fieldReader(units);
  const height = readNumberRow(TRAIL.top.rows.elevation, draft.elevation, 'elevation', fields);
  const elevation = height === undefined ? null : metre(height);
  const conditions = draft.conditions.flatMap((each, i) => {
    const name = `conditions.${i}.temperature`;
    if (each.temperature.trim() === '') return [];
    const celsius = readNumberRow(CONDITION.rows.temperature, each.temperature, name, fields);
    const humidity = humidityOf(each);
    if (humidity === null || (each.stationHpa !== '' && stationOf(each) === null)) {
      fields.complain(
        name,
        'What past winters said of this day is damaged. Remove the day and add it again.',
      );
      return [];
    }
    const pressure = pressureOf(each, elevation);
    if (celsius === undefined || pressure === null) return [];
    const air = airFrom({
      temperature: celsiusToKelvin(celsius),
      pressure,
      humidity: { kind: 'relative', value: humidity },
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

function pressureOf(condition: ConditionDraft, elevation: Metre | null): PressureGiven | null {
  const station = stationOf(condition);
  if (station !== null) return { kind: 'station', value: hectopascalToPascal(station) };
  return elevation === null ? null : { kind: 'standard', elevation };
}

/** The station pressure of past winters [hPa]; null where the day brings none that can be read. */
export function stationOf({ stationHpa }: ConditionDraft): number | null {
  const station = Number(stationHpa);
  return stationHpa.trim() !== '' && Number.isFinite(station) ? station : null;
}

/** null where what was kept is no share. */
function humidityOf({ humidity }: ConditionDraft): Ratio | null {
  if (humidity === '') return ratio(ASSUMED_RELATIVE_HUMIDITY);
  const percent = Number(humidity);
  return humidity.trim() !== '' && percent >= 0 ? ratio(Math.min(1, percent / 100)) : null;
}
