import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import { ALSO_WHEN_INCOMPLETE } from './also-when-incomplete';
import { elevationM, pressureConfirmed, pressureHpa, relativeHumidity, temperatureC } from './numbers';

/** One pressure, said by its kind; `elevationM` alone asks for the standard atmosphere, marked as an estimate. */
const pressureFields = {
  pressureHpa: z
    .optional(pressureHpa)
    .check(about('Station pressure [hPa]: what a barometer at the place shows.')),
  altimeterHpa: z.optional(pressureHpa).check(about('Altimeter setting [hPa]; needs elevationM.')),
  seaLevelHpa: z
    .optional(pressureHpa)
    .check(about('Pressure reduced to mean sea level [hPa]; needs elevationM.')),
  elevationM: z.optional(elevationM).check(about('Elevation of the place [m].')),
  pressureConfirmed: z.optional(pressureConfirmed),
};

const humidityFields = {
  relativeHumidity: z.optional(relativeHumidity).check(about('Over liquid water, 0 to 1.')),
  dewPointC: z.optional(z.number().check(z.minimum(-100), z.maximum(60))).check(about('Dew point [°C].')),
  frostPointC: z
    .optional(z.number().check(z.minimum(-100), z.maximum(0.01)))
    .check(about('Frost point [°C].')),
};

type GivenAir = {
  readonly pressureHpa?: number | undefined;
  readonly altimeterHpa?: number | undefined;
  readonly seaLevelHpa?: number | undefined;
  readonly relativeHumidity?: number | undefined;
  readonly dewPointC?: number | undefined;
  readonly frostPointC?: number | undefined;
};

const count = (values: readonly (number | undefined)[]): number =>
  values.filter((v) => v !== undefined).length;

/** Two numbers for one thing leave no right answer, so both are refused rather than one dropped. */
export function refuseTwoOfOne(air: GivenAir, context: z.core.$RefinementCtx): void {
  const refuse = (field: string, message: string) =>
    context.addIssue({ code: 'custom', path: [field], message });
  if (count([air.pressureHpa, air.altimeterHpa, air.seaLevelHpa]) > 1)
    refuse('pressureHpa', 'give one pressure: pressureHpa, altimeterHpa or seaLevelHpa');
  if (count([air.relativeHumidity, air.dewPointC, air.frostPointC]) > 1)
    refuse('relativeHumidity', 'give one humidity: relativeHumidity, dewPointC or frostPointC');
}

export const airStateSchema = z
  .strictObject({ temperatureC, ...pressureFields, ...humidityFields })
  .check(
    z.superRefine((state, context) => {
      refuseTwoOfOne(state, context);
      if (state.elevationM !== undefined) return;
      if (state.altimeterHpa !== undefined || state.seaLevelHpa !== undefined)
        context.addIssue({
          code: 'custom',
          path: ['elevationM'],
          message: 'an altimeter setting or a sea-level pressure needs elevationM',
        });
      else if (state.pressureHpa === undefined)
        context.addIssue({
          code: 'custom',
          path: ['pressureHpa'],
          message: 'give pressureHpa, or altimeterHpa or seaLevelHpa with elevationM, or elevationM alone',
        });
    }, ALSO_WHEN_INCOMPLETE),
  )
  .register(z.globalRegistry, { id: 'AirState' });

export type AirStateJson = z.infer<typeof airStateSchema>;
