import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import type { Air } from '@/lib/air/air';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';

/** Moist air as it is sent out: every number with its unit in its name, none rounded. */
export const airAnswerSchema = z
  .strictObject({
    temperatureC: z.number(),
    stationPressureHpa: z.number().check(about('What a barometer at the place shows.')),
    pressureFrom: z
      .enum(['station', 'altimeter', 'sea-level', 'standard'])
      .check(
        about('What the pressure was worked out from; "standard" is an estimate from the elevation alone.'),
      ),
    relativeHumidity: z.number().check(about('Over liquid water at every temperature, 0 to 1.')),
    vapourPressureHpa: z.number(),
    dewPointC: z.nullable(z.number()).check(about('null where the air holds no water.')),
    frostPointC: z.nullable(z.number()).check(about('null where the air holds no water.')),
    densityKgM3: z.number().check(about('Moist air, CIPM-2007.')),
    dryDensityKgM3: z.number().check(about('The dry air in it: what needs fuel.')),
    relativeDensity: z.number().check(about('Density over 1.225 kg/m³ (ISO 2533, sea level).')),
    densityAltitudeM: z.number(),
  })
  .register(z.globalRegistry, { id: 'Air' });

export type AirAnswer = z.output<typeof airAnswerSchema>;

export function airAnswer(air: Air): AirAnswer {
  return {
    temperatureC: kelvinToCelsius(air.temperature),
    stationPressureHpa: pascalToHectopascal(air.pressure),
    pressureFrom: air.pressureFrom,
    relativeHumidity: air.relativeHumidity,
    vapourPressureHpa: pascalToHectopascal(air.vapourPressure),
    dewPointC: air.dewPoint === null ? null : kelvinToCelsius(air.dewPoint),
    frostPointC: air.frostPoint === null ? null : kelvinToCelsius(air.frostPoint),
    densityKgM3: air.density,
    dryDensityKgM3: air.dryDensity,
    relativeDensity: air.relativeDensity,
    densityAltitudeM: air.densityAltitude,
  };
}
