import { type FieldReader, fieldReader, type TypedField } from '@/components/draft/field-reader';
import { withoutGaps } from '@/components/draft/without-gaps';
import { type AirStateJson, airStateSchema } from '@/lib/contract/air';
import { parseWith } from '@/lib/contract/parse';
import { pressureField } from '@/lib/contract/pressure';
import type { Path } from '@/lib/contract/problem';
import type { UnitChoice } from '@/lib/units/choice';
import type { AirDraft } from './air-draft';
import { isPressureConfirmed } from './pressure-key';

/** The air's JSON as far as it can be read; what cannot is missing and complained about, by `group.field`. */
export function readAir(draft: AirDraft, reader: FieldReader, group: string): object {
  const name = (field: string): string => `${group}.${field}`;
  return withoutGaps({
    temperatureC: reader.temperatureC({ name: name('temperature'), text: draft.temperature, example: '20' }),
    // Always asked for: with it a sea-level number typed as station pressure is noticed.
    elevationM: reader.elevationM({ name: name('elevation'), text: draft.elevation, example: '800' }),
    ...readPressure(draft, reader, name('pressure')),
    pressureConfirmed: isPressureConfirmed(draft) ? true : undefined,
    ...readHumidity(draft, reader, name('humidity')),
  });
}

/** The air as typed so far, for showing what it comes to; null until it can be read. */
export function typedAir(draft: AirDraft, units: UnitChoice): AirStateJson | null {
  const air = parseWith(airStateSchema, readAir(draft, fieldReader(units), 'air'));
  return air.ok ? air.value : null;
}

function readPressure({ pressureKind, pressure }: AirDraft, reader: FieldReader, name: string): object {
  if (pressureKind === 'standard') return {};
  const hpa = reader.pressureHpa({ name, text: pressure, example: '29.92 inHg' });
  return { [pressureField(pressureKind)]: hpa };
}

function readHumidity({ humidityKind, humidity }: AirDraft, reader: FieldReader, name: string): object {
  switch (humidityKind) {
    case 'unknown':
      return {};
    case 'relative':
      return { relativeHumidity: readRelative({ name, text: humidity, example: '80' }, reader) };
    case 'dew-point':
      return { dewPointC: reader.temperatureC({ name, text: humidity, example: '10' }) };
    case 'frost-point':
      return { frostPointC: reader.temperatureC({ name, text: humidity, example: '-10 °C' }) };
  }
}

function readRelative(field: TypedField, reader: FieldReader): number | undefined {
  const humidity = reader.ratio(field);
  if (humidity !== undefined && (humidity < 0 || humidity > 1))
    reader.complain(field.name, 'Relative humidity lies between 0 and 100 %.');
  return humidity;
}

const FIELDS: Readonly<Record<string, string>> = {
  temperatureC: 'temperature',
  pressureHpa: 'pressure',
  altimeterHpa: 'pressure',
  seaLevelHpa: 'pressure',
  elevationM: 'elevation',
  pressureConfirmed: 'pressure',
  relativeHumidity: 'humidity',
  dewPointC: 'humidity',
  frostPointC: 'humidity',
};

/** The field that the last step of a path in an air's JSON was typed in: "air.pressure". */
export function airField(path: Path, group: string): string {
  return `${group}.${FIELDS[String(path.at(-1))] ?? 'temperature'}`;
}

const LABELS: Readonly<Record<string, string>> = {
  temperature: 'Temperature',
  elevation: 'Elevation',
  pressureKind: 'Pressure',
  pressure: 'Pressure',
  humidityKind: 'Humidity',
  humidity: 'Humidity',
};

/** What an air's field is called; null where the name is no air's. */
export function airLabel(name: string, group: string): string | null {
  return name.startsWith(`${group}.`) ? (LABELS[name.slice(group.length + 1)] ?? null) : null;
}
