import { parseWith } from '@/lib/contract/parse';
import { pressureField } from '@/lib/contract/pressure';
import type { Path } from '@/lib/contract/problem';
import { typedSeriesFromJson } from '@/lib/contract/typed-hours-from-json';
import { complainOf } from '@/lib/fields/complain-of';
import { type FieldReader, type FormReading, fieldReader, ifTyped } from '@/lib/fields/field-reader';
import { withoutGaps } from '@/lib/fields/without-gaps';
import { type TypedHours, typedHoursSchema } from '@/lib/store/records';
import { instant } from '@/lib/time/instant';
import { isoLocal } from '@/lib/time/zone';
import { type HourRow, type HoursDraft, isBlank } from './hours-draft';
import { areHoursConfirmed } from './hours-pressure-key';

/** The hours as typed, and the elevation they were typed with. */
export type HoursReading = { readonly typed: TypedHours; readonly elevationM: number };

type Zoned = { readonly zone: string };

/** What an hours' draft says: the typed hours, or what is wrong with which field. */
export function readHours(draft: HoursDraft, { zone }: Zoned): FormReading<HoursReading> {
  const reader = fieldReader(draft.units);
  const typedRows = draft.rows.flatMap((row, index) => (isBlank(row) ? [] : [{ row, index }]));
  const hours = typedRows.map(({ row, index }) => hourJson(row, { index, draft, reader, zone }));
  if (typedRows.filter(({ row }) => row.temperature.trim() !== '').length < 2)
    reader.complain('rows', 'Type at least two temperatures; the hours between them are filled in.');
  const elevationM = reader.read('elevation', { name: 'elevation', text: draft.elevation, example: '402' });
  const pressure = readPressure(draft, reader);
  const relativeHumidity = readHumidity('humidity', draft.humidity, reader);
  const pressureConfirmed = areHoursConfirmed(draft) ? true : undefined;
  const toFields = {
    fieldOf: (path: Path) => hoursField(path, { draft, places: typedRows.map(({ index }) => index) }),
    zone,
  };
  const parsed = parseWith(
    typedHoursSchema,
    withoutGaps({ hours, pressure, relativeHumidity, pressureConfirmed }),
  );
  if (!parsed.ok) complainOf(reader, parsed.reason, toFields);
  const unread = Object.keys(reader.errors()).length > 0;
  if (!parsed.ok || unread || elevationM === undefined) return { value: null, errors: reader.errors() };
  const series = typedSeriesFromJson(parsed.value, elevationM);
  if (!series.ok) complainOf(reader, series.reason, toFields);
  return {
    value: series.ok ? { typed: parsed.value, elevationM } : null,
    errors: reader.errors(),
  };
}

type RowPlace = Zoned & {
  readonly index: number;
  readonly draft: HoursDraft;
  readonly reader: FieldReader;
};

function hourJson(row: HourRow, { index, draft, reader, zone }: RowPlace): object {
  const name = (field: string): string => `rows.${index}.${field}`;
  const { pressureKind, humidityByHour, pressureByHour } = draft;
  const pressureHpa =
    pressureByHour && pressureKind !== 'standard'
      ? ifTyped(row.pressure, () =>
          reader.read('pressure', { name: name('pressure'), text: row.pressure, example: '29.92 inHg' }),
        )
      : undefined;
  return withoutGaps({
    time: isoLocal(instant(Date.parse(row.at)), zone),
    temperatureC: reader.read('temperature', {
      name: name('temperature'),
      text: row.temperature,
      example: '-12.5',
    }),
    ...(pressureHpa === undefined || pressureKind === 'standard'
      ? {}
      : { [pressureField(pressureKind)]: pressureHpa }),
    relativeHumidity: humidityByHour
      ? ifTyped(row.humidity, () => readHumidity(name('humidity'), row.humidity, reader))
      : undefined,
  });
}

function readHumidity(name: string, text: string, reader: FieldReader): number | undefined {
  const humidity = reader.read('percent', { name, text, example: '80' });
  if (humidity !== undefined && (humidity < 0 || humidity > 1))
    reader.complain(name, 'Relative humidity lies between 0 and 100 %.');
  return humidity;
}

/** Said once; not needed where hours have pressures of their own, for the others follow those. */
function readPressure(draft: HoursDraft, reader: FieldReader): object {
  const { pressureKind, pressure, pressureByHour, rows } = draft;
  if (pressureKind === 'standard') return { kind: 'standard' };
  const someHaveOwn = pressureByHour && rows.some((row) => row.pressure.trim() !== '');
  if (someHaveOwn && pressure.trim() === '') return { kind: 'standard' };
  const hpa = reader.read('pressure', { name: 'pressure', text: pressure, example: '29.92 inHg' });
  return { kind: pressureKind, hpa };
}

type Places = { readonly draft: HoursDraft; readonly places: readonly number[] };

/** The field that a place in the typed hours' JSON was typed in. */
function hoursField(path: Path, { draft, places }: Places): string {
  const [head, second, third] = path;
  if (head === 'pressure') return 'pressure';
  if (head === 'relativeHumidity') return 'humidity';
  const index = typeof second === 'number' ? places[second] : undefined;
  const row = index === undefined ? undefined : draft.rows[index];
  if (head !== 'hours' || row === undefined) return 'rows';
  if (third === 'elevationM') return 'elevation';
  if (third === 'relativeHumidity' || third === 'dewPointC')
    return row.humidity.trim() === '' || !draft.humidityByHour ? 'humidity' : `rows.${index}.humidity`;
  if (third === 'temperatureC' || third === 'time') return `rows.${index}.temperature`;
  return row.pressure.trim() === '' || !draft.pressureByHour ? 'pressure' : `rows.${index}.pressure`;
}
