import { type FieldReader, fieldReader, ifTyped, type TypedField } from '@/components/draft/field-reader';
import { withoutGaps } from '@/components/draft/without-gaps';
import { type AirStateJson, airStateSchema } from '@/lib/contract/air';
import { parseWith } from '@/lib/contract/parse';
import type { UnitChoice } from '@/lib/units/choice';
import type { BaselineDraft } from './machine-draft';

/** The baseline's JSON as far as it can be read. */
export function readBaseline(draft: BaselineDraft, reader: FieldReader): unknown {
  return withoutGaps({
    air: readAir(draft, reader),
    judged: draft.judged,
    provenOn: ifTyped(draft.provenOn, () => draft.provenOn.trim()),
    note: ifTyped(draft.note, () => draft.note),
    intakeOffsetC: draft.sameIntake
      ? undefined
      : reader.temperatureStepC({ name: 'baseline.intakeOffset', text: draft.intakeOffset, example: '5' }),
  });
}

function readAir(draft: BaselineDraft, reader: FieldReader): object {
  return withoutGaps({
    temperatureC: reader.temperatureC({
      name: 'baseline.temperature',
      text: draft.temperature,
      example: '20',
    }),
    // Always asked for: with it a sea-level number typed as station pressure is noticed.
    elevationM: reader.elevationM({ name: 'baseline.elevation', text: draft.elevation, example: '800' }),
    ...readPressure(draft, reader),
    ...readHumidity(draft, reader),
  });
}

/** The air as typed so far, for showing what it comes to; null until it can be read. */
export function baselineAir(draft: BaselineDraft, units: UnitChoice): AirStateJson | null {
  const air = parseWith(airStateSchema, readAir(draft, fieldReader(units)));
  return air.ok ? air.value : null;
}

const PRESSURE_KEYS = {
  station: 'pressureHpa',
  altimeter: 'altimeterHpa',
  'sea-level': 'seaLevelHpa',
} as const;

function readPressure({ pressureKind, pressure }: BaselineDraft, reader: FieldReader): object {
  if (pressureKind === 'standard') return {};
  const hpa = reader.pressureHpa({ name: 'baseline.pressure', text: pressure, example: '29.92 inHg' });
  return { [PRESSURE_KEYS[pressureKind]]: hpa };
}

function readHumidity({ humidityKind, humidity }: BaselineDraft, reader: FieldReader): object {
  const name = 'baseline.humidity';
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
