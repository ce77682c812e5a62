import { ok, type Result } from '@/lib/result/result';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { metre, ratio } from '@/lib/units/quantity';
import type { AnswerProblem } from '@/lib/weather/problem';
import type { ServiceAnswer } from '@/lib/weather/service-hour';
import { readColumn, readTimes } from './columns';
import type { OpenMeteoHours } from './schema';
import { skyOf } from './sky';

const FIELDS = [
  { name: 'temperature_2m', unit: '°C' },
  { name: 'dew_point_2m', unit: '°C' },
  { name: 'relative_humidity_2m', unit: '%' },
  { name: 'surface_pressure', unit: 'hPa' },
  { name: 'pressure_msl', unit: 'hPa' },
] as const;

type FieldName = (typeof FIELDS)[number]['name'];

/** Open-Meteo's columns as hours. `surface_pressure` is station pressure at the answer's elevation. */
export function adaptOpenMeteo(wire: OpenMeteoHours): Result<ServiceAnswer, AnswerProblem> {
  const times = readTimes(wire.hourly.time, wire.utc_offset_seconds);
  if (!times.ok) return times;
  const columns = readFields(wire, times.value.length);
  if (!columns.ok) return columns;
  const at = (name: FieldName, row: number): number | null => columns.value[name]?.[row] ?? null;
  const convert = <Q>(value: number | null, to: (value: number) => Q): Q | null =>
    value === null ? null : to(value);
  const hours = times.value.map((time, row) => ({
    at: time,
    temperature: convert(at('temperature_2m', row), celsiusToKelvin),
    dewPoint: convert(at('dew_point_2m', row), celsiusToKelvin),
    relativeHumidity: convert(at('relative_humidity_2m', row), (percent) => ratio(percent / 100)),
    stationPressure: convert(at('surface_pressure', row), hectopascalToPascal),
    seaLevelPressure: convert(at('pressure_msl', row), hectopascalToPascal),
    spread: null,
    sky: skyOf(wire, row),
  }));
  const place = { latitude: wire.latitude, longitude: wire.longitude };
  return ok({ hours, elevation: metre(wire.elevation), issuedAt: null, place, conflicting: [] });
}

type Columns = { readonly [name in FieldName]?: readonly (number | null)[] };

function readFields(wire: OpenMeteoHours, length: number): Result<Columns, AnswerProblem> {
  let columns: Columns = {};
  for (const { name, unit } of FIELDS) {
    const column = { values: wire.hourly[name], unit: wire.hourly_units[name] };
    const read = readColumn(name, column, { units: [unit], length });
    if (!read.ok) return read;
    columns = { ...columns, [name]: read.value };
  }
  return ok(columns);
}
