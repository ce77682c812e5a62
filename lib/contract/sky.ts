import * as z from 'zod';
import type { Hour } from '@/lib/hours/series';
import { metre, ratio, speedMs } from '@/lib/units/quantity';

/** What an hour may say besides its air: who made it, and what makes a night's cold. Absent: not told. */
export const skyFields = {
  rawModel: z
    .boolean()
    .optional()
    .describe(
      "True where the temperature is a weather model's own, not corrected by past errors of stations. Absent: nobody knows, and it may be.",
    ),
  cloudCover: z.number().min(0).max(1).optional().describe('Share of the sky under cloud, 0 to 1.'),
  windMs: z.number().min(0).max(150).optional().describe('Wind at 10 m [m/s].'),
  snowDepthM: z.number().min(0).max(50).optional().describe('Snow on the ground [m].'),
  daylight: z.boolean().optional().describe('True where the sun is up.'),
};

const skySchema = z.object(skyFields);

export type SkyJson = z.output<typeof skySchema>;

export function skyFromJson(json: SkyJson): Pick<Hour, 'rawModel' | 'sky'> {
  const { rawModel, cloudCover, windMs, snowDepthM, daylight } = json;
  const told = [cloudCover, windMs, snowDepthM, daylight].some((each) => each !== undefined);
  return {
    ...(rawModel === undefined ? {} : { rawModel }),
    ...(told
      ? {
          sky: {
            cloudCover: cloudCover === undefined ? null : ratio(cloudCover),
            wind: windMs === undefined ? null : speedMs(windMs),
            snowDepth: snowDepthM === undefined ? null : metre(snowDepthM),
            daylight: daylight ?? null,
          },
        }
      : {}),
  };
}

export function skyToJson({ rawModel, sky }: Pick<Hour, 'rawModel' | 'sky'>): SkyJson {
  return {
    ...(rawModel === undefined ? {} : { rawModel }),
    ...(sky === undefined || sky.cloudCover === null ? {} : { cloudCover: sky.cloudCover }),
    ...(sky === undefined || sky.wind === null ? {} : { windMs: sky.wind }),
    ...(sky === undefined || sky.snowDepth === null ? {} : { snowDepthM: sky.snowDepth }),
    ...(sky === undefined || sky.daylight === null ? {} : { daylight: sky.daylight }),
  };
}
