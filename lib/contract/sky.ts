import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import type { Hour } from '@/lib/hours/series';
import { metre, ratio, speedMs } from '@/lib/units/quantity';

/** What an hour may say besides its air: who made it, and what makes a night's cold. Absent: not told. */
export const skyFields = {
  rawModel: z
    .optional(z.boolean())
    .check(
      about(
        "True where the temperature is a weather model's own, not corrected by past errors of stations. Absent: nobody knows, and it may be.",
      ),
    ),
  cloudCover: z
    .optional(z.number().check(z.minimum(0), z.maximum(1)))
    .check(about('Share of the sky under cloud, 0 to 1.')),
  windMs: z.optional(z.number().check(z.minimum(0), z.maximum(150))).check(about('Wind at 10 m [m/s].')),
  snowDepthM: z
    .optional(z.number().check(z.minimum(0), z.maximum(50)))
    .check(about('Snow on the ground [m].')),
  daylight: z.optional(z.boolean()).check(about('True where the sun is up.')),
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
