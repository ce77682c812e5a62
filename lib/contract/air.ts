import { z } from 'zod';
import { elevationM, pressureHpa, relativeHumidity, temperatureC } from './numbers';

/** One pressure, said by its kind; `elevationM` alone asks for the standard atmosphere, marked as an estimate. */
const pressureFields = {
  pressureHpa: pressureHpa.optional().describe('Station pressure [hPa]: what a barometer at the place shows.'),
  altimeterHpa: pressureHpa.optional().describe('Altimeter setting [hPa]; needs elevationM.'),
  seaLevelHpa: pressureHpa.optional().describe('Pressure reduced to mean sea level [hPa]; needs elevationM.'),
  elevationM: elevationM.optional().describe('Elevation of the place [m].'),
};

const humidityFields = {
  relativeHumidity: relativeHumidity.optional().describe('Over liquid water, 0 to 1.'),
  dewPointC: z.number().min(-100).max(60).optional().describe('Dew point [°C].'),
  frostPointC: z.number().min(-100).max(0.01).optional().describe('Frost point [°C].'),
};

export const airStateSchema = z
  .strictObject({ temperatureC, ...pressureFields, ...humidityFields })
  .superRefine((state, context) => {
    const given = [state.pressureHpa, state.altimeterHpa, state.seaLevelHpa].filter((p) => p !== undefined);
    if (given.length > 1)
      context.addIssue({ code: 'custom', path: ['pressureHpa'], message: 'give one pressure: pressureHpa, altimeterHpa or seaLevelHpa' });
    if (given.length === 0 && state.elevationM === undefined)
      context.addIssue({ code: 'custom', path: ['pressureHpa'], message: 'give pressureHpa, or altimeterHpa or seaLevelHpa with elevationM, or elevationM alone' });
    if ((state.altimeterHpa !== undefined || state.seaLevelHpa !== undefined) && state.elevationM === undefined)
      context.addIssue({ code: 'custom', path: ['elevationM'], message: 'an altimeter setting or a sea-level pressure needs elevationM' });
    const humidities = [state.relativeHumidity, state.dewPointC, state.frostPointC].filter((h) => h !== undefined);
    if (humidities.length > 1)
      context.addIssue({ code: 'custom', path: ['relativeHumidity'], message: 'give one of relativeHumidity, dewPointC, frostPointC' });
  })
  .meta({ id: 'AirState' });

export type AirStateJson = z.infer<typeof airStateSchema>;
