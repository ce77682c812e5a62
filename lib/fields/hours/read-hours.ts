import { parseWith } from '@/lib/contract/parse';
import { pressureField } from '@/lib/contract/pressure';
import type { Path } from '@/lib/contract/problem';
import { typedSeriesFromJson } from '@/lib/contract/typed-hours-from-json';
import { complainOf } from '@/lib/fields/complain-of';
import { type FieldReader, type FormReading, fieldReader } from '@/lib/fields/field-reader';
import { numberAt } from '@/lib/fields/record-path';
import { fieldAt, readFieldRow, readFields } from '@/lib/fields/table-values';
import { withoutGaps } from '@/lib/fields/without-gaps';
import { type TypedHours, typedHoursSchema } from '@/lib/store/records';
import { isoLocal } from '@/lib/time/zone';
import { type HourRow, type HoursDraft, isBlank, rowTime } from './hours-draft';
import { areHoursConfirmed } from './hours-pressure-key';
import { HOUR, HOURS } from './hours-rows';

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
  const once = readFields(HOURS, draft, reader, hasOnlyOwnPressures(draft) ? NONE_FOR_ALL : {});
  const elevationM = numberAt(once, 'elevationM');
  const pressureConfirmed = areHoursConfirmed(draft) ? true : undefined;
  const toFields = {
    fieldOf: (path: Path) => hoursField(path, { draft, places: typedRows.map(({ index }) => index) }),
    zone,
  };
  const parsed = parseWith(
    typedHoursSchema,
    withoutGaps({ ...once, elevationM: undefined, hours, pressureConfirmed }),
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
  const { pressureKind: kind, humidityByHour, pressureByHour } = draft;
  const read = (key: keyof typeof HOUR.rows) =>
    readFieldRow(HOUR.rows[key], row[key], `rows.${index}.${key}`, reader);
  return withoutGaps({
    time: isoLocal(rowTime(row), zone),
    temperatureC: read('temperature'),
    ...(pressureByHour && kind !== 'standard' ? { [pressureField(kind)]: read('pressure') } : {}),
    relativeHumidity: humidityByHour ? read('humidity') : undefined,
  });
}

/** Not needed for all where hours have pressures of their own: the others follow those. */
function hasOnlyOwnPressures({ pressureKind, pressure, pressureByHour, rows }: HoursDraft): boolean {
  const someHaveOwn = pressureByHour && rows.some((row) => row.pressure.trim() !== '');
  return pressureKind !== 'standard' && someHaveOwn && pressure.trim() === '';
}

const NONE_FOR_ALL = { pressureKind: () => 'standard', pressure: () => undefined } as const;

type Places = { readonly draft: HoursDraft; readonly places: readonly number[] };

/** The field that a place in the typed hours' JSON was typed in. */
function hoursField(path: Path, { draft, places }: Places): string {
  const [head, second, third] = path;
  if (head !== 'hours') return fieldAt(HOURS, draft, path) ?? 'rows';
  const index = typeof second === 'number' ? places[second] : undefined;
  const row = index === undefined ? undefined : draft.rows[index];
  if (row === undefined) return 'rows';
  if (third === 'elevationM') return 'elevation';
  if (third === 'relativeHumidity' || third === 'dewPointC')
    return row.humidity.trim() === '' || !draft.humidityByHour ? 'humidity' : `rows.${index}.humidity`;
  if (third === 'temperatureC' || third === 'time') return `rows.${index}.temperature`;
  return row.pressure.trim() === '' || !draft.pressureByHour ? 'pressure' : `rows.${index}.pressure`;
}
