import type { PressureKind } from '@/lib/air/air';
import type { PastedHours, PastedRow } from '@/lib/hours/pasted';
import { isoUtc } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { percentText, pressureText, temperatureText } from '@/lib/units/entry-text';
import { type HourRow, type HoursDraft, withRows } from './hours-draft';
import { humidityAtDewPoint } from './humidity-text';

/** The draft with pasted hours in it. They replace what stood at the same moments; other rows stay. */
export function takePasted(draft: HoursDraft, pasted: PastedHours, kind: PressureKind | null): HoursDraft {
  const withPressure = kind !== null && kind !== 'standard' && hasPressure(pasted);
  const rows = pasted.rows.map((row) => {
    const hour = hourRow(row, draft.units);
    return withPressure ? hour : { ...hour, pressure: '' };
  });
  return {
    ...draft,
    rows: withRows(draft.rows, rows),
    humidityByHour: draft.humidityByHour || rows.some(({ humidity }) => humidity !== ''),
    pressureByHour: draft.pressureByHour || withPressure,
    pressureKind: withPressure ? kind : draft.pressureKind,
    pasted: '',
  };
}

/** Whether there are pressures whose kind must be known before they can be used. */
export function hasPressure({ rows }: PastedHours): boolean {
  return rows.some(({ pressure }) => pressure !== null);
}

function hourRow(row: PastedRow, units: UnitChoice): HourRow {
  return {
    at: isoUtc(row.at),
    temperature: temperatureText(row.temperature, units),
    humidity: humidityText(row),
    pressure: row.pressure === null ? '' : pressureText(row.pressure, units),
  };
}

function humidityText({ relativeHumidity, dewPoint, temperature }: PastedRow): string {
  if (relativeHumidity !== null) return percentText(relativeHumidity);
  return dewPoint === null ? '' : humidityAtDewPoint(dewPoint, temperature);
}
