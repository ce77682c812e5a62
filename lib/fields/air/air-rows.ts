import type { AirStateJson } from '@/lib/contract/air';
import { PRESSURE_FIELDS } from '@/lib/contract/pressure';
import { type FieldRow, groupOf, type ValuesOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import type { PathTo } from '@/lib/fields/record-path';
import { kindFrom, valuesFrom } from '@/lib/fields/table-values';
import { ok } from '@/lib/result/result';
import type { UnitChoice } from '@/lib/units/choice';
import { humidityAssumedSentence } from '@/lib/words/assumptions';
import { PRESSURE_CHOICES, PRESSURE_MEANINGS, PRESSURE_NAMES } from '@/lib/words/pressure-kinds';
import { isPressureConfirmed, pressureKey } from './pressure-key';

const f = fieldRowsFor<AirStateJson>();

/** With its unit, since a bare number goes by the person's own. */
export const PRESSURE_EXAMPLE = '29.92 inHg';

/** One text is a pressure of the kind that is chosen: the same number means four different airs. */
export const PRESSURES = {
  station: f.pressure({
    label: PRESSURE_NAMES.station,
    at: PRESSURE_FIELDS.station,
    example: PRESSURE_EXAMPLE,
  }),
  altimeter: f.pressure({
    label: PRESSURE_NAMES.altimeter,
    at: PRESSURE_FIELDS.altimeter,
    example: PRESSURE_EXAMPLE,
  }),
  'sea-level': f.pressure({
    label: PRESSURE_NAMES['sea-level'],
    at: PRESSURE_FIELDS['sea-level'],
    example: PRESSURE_EXAMPLE,
  }),
} as const;

export const HUMIDITY_WITHIN = {
  least: 0,
  most: 1,
  words: 'Relative humidity lies between 0 and 100 %.',
} as const;

const HUMIDITIES = {
  relative: f.percent({
    label: 'Relative humidity',
    at: 'relativeHumidity',
    example: '80',
    within: HUMIDITY_WITHIN,
  }),
  'dew-point': f.temperature({ label: 'Dew point', at: 'dewPointC', example: '10' }),
  'frost-point': f.temperature({ label: 'Frost point', at: 'frostPointC', example: '-10 °C' }),
} as const;

const AIR_ROWS = {
  temperature: f.temperature({ label: 'Temperature', at: 'temperatureC', example: '20' }),
  // Always asked for: with it a sea-level number typed as station pressure is noticed.
  elevation: f.elevation({ label: 'Elevation', at: 'elevationM', example: '800' }),
  pressureKind: f.choice({
    label: 'Pressure',
    blank: 'standard',
    options: [{ value: 'standard', label: 'Not known' }, ...PRESSURE_CHOICES],
    hint: PRESSURE_MEANINGS,
  }),
  pressure: { ...PRESSURES.station, label: 'Pressure' },
  /** What was stood by of the three above (`pressure-key.ts`); empty where nothing was. */
  pressureConfirmed: f.own<boolean>({
    label: 'Pressure',
    at: 'pressureConfirmed',
    read: () => ok(true),
    write: () => '',
  }),
  humidityKind: f.choice({
    label: 'Humidity',
    blank: 'unknown',
    control: 'select',
    options: [
      { value: 'unknown', label: 'Not known' },
      { value: 'relative', label: HUMIDITIES.relative.label },
      { value: 'dew-point', label: HUMIDITIES['dew-point'].label },
      { value: 'frost-point', label: HUMIDITIES['frost-point'].label },
    ],
    hint: { unknown: humidityAssumedSentence(), relative: '', 'dew-point': '', 'frost-point': '' },
  }),
  humidity: { ...HUMIDITIES.relative, label: 'Humidity' },
} as const;

/** An air as it is typed, in whatever form it is known. */
export type AirDraft = ValuesOf<typeof AIR_ROWS>;

/** The rows of an air, and what hangs on its kinds, for an air that stands at a place of a record. */
export function airRowsAt<J>(at: PathTo<J, AirStateJson>) {
  const moved = <V extends string>(row: FieldRow<V>): FieldRow<V> =>
    row.at === undefined ? row : { ...row, at: `${at}.${row.at}` };
  return airRows(moved);
}

function airRows(moved: <V extends string>(row: FieldRow<V>) => FieldRow<V>) {
  const { temperature, elevation, pressureKind, pressure, pressureConfirmed, humidityKind, humidity } =
    AIR_ROWS;
  return {
    rows: {
      temperature: moved(temperature),
      elevation: moved(elevation),
      pressureKind,
      pressure: moved(pressure),
      pressureConfirmed: moved(pressureConfirmed),
      humidityKind,
      humidity: moved(humidity),
    },
    as: {
      pressure: ({ pressureKind: kind }: AirDraft) => (kind === 'standard' ? null : moved(PRESSURES[kind])),
      pressureConfirmed: (air: AirDraft) => (isPressureConfirmed(air) ? moved(pressureConfirmed) : null),
      humidity: ({ humidityKind: kind }: AirDraft) => (kind === 'unknown' ? null : moved(HUMIDITIES[kind])),
    },
  };
}

const { rows, as } = airRows((row) => row);

/** An air by itself. */
export const AIR = groupOf(rows, { as });

/** The draft that reads back as `air`. */
export function airDraft(air: AirStateJson, units: UnitChoice): AirDraft {
  const pressure = kindFrom(PRESSURES, air, units);
  const humidity = kindFrom(HUMIDITIES, air, units);
  const values: AirDraft = {
    ...valuesFrom(AIR, air, units),
    pressureKind: pressure?.kind ?? 'standard',
    pressure: pressure?.text ?? '',
    humidityKind: humidity?.kind ?? 'unknown',
    humidity: humidity?.text ?? '',
  };
  return { ...values, pressureConfirmed: air.pressureConfirmed === true ? pressureKey(values) : '' };
}
