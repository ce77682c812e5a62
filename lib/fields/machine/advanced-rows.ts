import { DEFAULT_RESPONSE } from '@/lib/carb/response';
import type { MachineJson } from '@/lib/contract/machine';
import { groupOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import { numberText } from '@/lib/units/entry-text';

const f = fieldRowsFor<MachineJson>();

type ResponseOriginJson = NonNullable<MachineJson['response']>['origin'];

// A number changed by hand is no longer what was learned.
const byHand = () => ({ origin: 'typed' as const });

export const RESPONSE = groupOf(
  {
    /** false: the default prior, whatever it may become. */
    own: f.flag({
      label: 'Own response to pressure and temperature',
      hint: 'How far mains move with the air: 0.5 is the law of an orifice, 1 is in step with density. Until your chart or log says otherwise, 0.65 ± 0.12 is assumed for both.',
    }),
    origin: f.kept<ResponseOriginJson>('typed', 'response.origin'),
    pressureExponent: f.number({
      label: 'By pressure',
      at: 'response.pressureExponent',
      blank: numberText(DEFAULT_RESPONSE.pressureExponent),
      example: '0.65',
    }),
    pressureSd: f.number({
      label: '± (pressure)',
      at: 'response.pressureSd',
      blank: numberText(DEFAULT_RESPONSE.pressureSd),
      example: '0.12',
    }),
    temperatureExponent: f.number({
      label: 'By temperature',
      at: 'response.temperatureExponent',
      blank: numberText(DEFAULT_RESPONSE.temperatureExponent),
      example: '0.65',
    }),
    temperatureSd: f.number({
      label: '± (temperature)',
      at: 'response.temperatureSd',
      blank: numberText(DEFAULT_RESPONSE.temperatureSd),
      example: '0.12',
    }),
    correlation: f.number({
      label: 'Correlation',
      at: 'response.correlation',
      blank: numberText(DEFAULT_RESPONSE.correlation),
      example: '0.7',
    }),
  },
  {
    switch: { key: 'own', at: 'response' },
    sets: {
      pressureExponent: byHand,
      pressureSd: byHand,
      temperatureExponent: byHand,
      temperatureSd: byHand,
      correlation: byHand,
    },
  },
);

export const FUEL_DENSITY = groupOf(
  {
    on: f.flag({
      label: 'Count the density of cold fuel',
      hint: 'Cold fuel is denser and thicker; the two about cancel in a jet, so this is off.',
    }),
    offset: f.step({
      label: 'Fuel warmer than outside',
      at: 'fuelDensity.offsetC',
      blank: '0',
      example: '0',
    }),
    baseline: f.temperature({
      label: 'Fuel temperature when proven',
      at: 'fuelDensity.baselineC',
      example: '20',
    }),
  },
  { switch: { key: 'on', at: 'fuelDensity' } },
);
