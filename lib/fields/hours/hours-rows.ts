import type { PressureKind } from '@/lib/air/air';
import type { HourJson } from '@/lib/contract/event';
import { AIR, HUMIDITY_WITHIN, PRESSURE_EXAMPLE } from '@/lib/fields/air/air-rows';
import { type FieldTable, groupOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import type { TypedHours } from '@/lib/store/records';
import { PRESSURE_NAMES } from '@/lib/words/pressure-kinds';

/** What is said once for all hours of a night; the elevation is kept with the event. */
type OnceJson = Omit<TypedHours, 'hours' | 'pressure'> & {
  readonly elevationM: number;
  readonly pressure: { readonly kind: PressureKind; readonly hpa: number };
};

const once = fieldRowsFor<OnceJson>();
const hourly = fieldRowsFor<HourJson>();

const pressure = once.pressure({ label: 'Pressure', at: 'pressure.hpa', example: PRESSURE_EXAMPLE });
const BY_THE_HOUR = 'Hours left empty follow those around them.';

/** The hours of a night, without the hours themselves (`HOUR`), in the order of the form. */
export const HOURS = {
  top: groupOf(
    {
      elevation: once.elevation({
        label: 'Elevation of the track',
        at: 'elevationM',
        example: '402',
        hint: 'Kept with the event.',
      }),
      humidity: once.percent({
        label: 'Humidity for all hours',
        at: 'relativeHumidity',
        blank: '80',
        example: '80',
        within: HUMIDITY_WITHIN,
        hint: 'In the cold it hardly counts.',
      }),
      pressureKind: { ...AIR.rows.pressureKind, at: 'pressure.kind' },
      /** For every hour that has no pressure of its own. */
      pressure,
      /** What was stood by of the pressures (`hours-pressure-key.ts`); empty where nothing was. */
      pressureConfirmed: once.kept<string>(''),
      humidityByHour: once.flag({ label: 'Humidity by the hour', hint: BY_THE_HOUR }),
      pressureByHour: once.flag({ label: 'Pressure by the hour', hint: BY_THE_HOUR }),
      pasted: once.kept<string>(''),
      /** A time between the hours, before it is added as a row. */
      addedClock: once.kept<string>(''),
    },
    {
      asked: { pressureByHour: ({ pressureKind: kind }) => kind !== 'standard' },
      as: {
        pressure: ({ pressureKind: kind }) =>
          kind === 'standard' ? null : { ...pressure, label: PRESSURE_NAMES[kind] },
      },
    },
  ),
} satisfies FieldTable;

/** One hour. Where its temperature is empty, the curve between its typed neighbours stands in. */
export const HOUR = groupOf({
  temperature: hourly.temperature({ label: 'Temperature', at: 'temperatureC', example: '-12.5' }),
  humidity: hourly.percent({
    label: 'Humidity',
    at: 'relativeHumidity',
    optional: true,
    example: '80',
    within: HUMIDITY_WITHIN,
  }),
  /** Of the kind that is chosen for all of them. */
  pressure: hourly.pressure({ label: 'Pressure', optional: true, example: PRESSURE_EXAMPLE }),
});
