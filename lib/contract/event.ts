import * as z from 'zod';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import { refuseTwoOfOne } from './air';
import { ALSO_WHEN_INCOMPLETE } from './also-when-incomplete';
import { nameText, withoutDirections } from './name-text';
import {
  elevationM,
  jetSize,
  pressureConfirmed,
  pressureHpa,
  relativeHumidity,
  temperatureC,
  time,
} from './numbers';
import { skyFields } from './sky';

export const settingSchema = z.strictObject({
  mains: z.array(jetSize).min(1).max(6),
  trim: z.int().nullable().default(null),
});

const runSchema = z.strictObject({
  name: nameText,
  start: time,
  end: time,
  weight: z.number().min(0).max(100).default(1),
  typicalSeconds: z
    .number()
    .min(0.1, 'expected 0.1 to 86400')
    .max(86_400)
    .optional()
    .describe('Typical time over a fixed distance; gives the price of a swap in seconds.'),
});

export const placeSchema = z.strictObject({
  name: z.string().overwrite(withoutDirections).max(120).default(''),
  latitude: z.number().min(-90, 'expected -90 to 90').max(90, 'expected -90 to 90'),
  longitude: z.number().min(-180, 'expected -180 to 180').max(180, 'expected -180 to 180'),
});

const timezoneSchema = z
  .string()
  .max(64)
  .refine(
    (zone) => {
      try {
        new Intl.DateTimeFormat('en', { timeZone: zone });
        return true;
      } catch {
        return false;
      }
    },
    { message: 'not an IANA time zone, such as America/Chicago' },
  );

export const eventSchema = z
  .strictObject({
    name: nameText,
    timezone: timezoneSchema,
    place: placeSchema.optional(),
    elevationM,
    runs: z.array(runSchema).max(60, 'at most 60 runs'),
    swapMinutes: z
      .number()
      .min(0, 'expected 0 to 600')
      .max(600, 'expected 0 to 600')
      .default(DEFAULT_OPTIONS.swapMinutes),
    ride: z.boolean().default(false).describe('One setting for all runs: a ride has no stop to swap in.'),
  })
  .meta({ id: 'Event' });

export type EventJson = z.output<typeof eventSchema>;
export type RunJson = z.output<typeof runSchema>;
export type PlaceJson = z.output<typeof placeSchema>;
export type SettingJson = z.output<typeof settingSchema>;

/** One hour as typed or sent. Pressure is station pressure where given; altimeter and sea-level kinds have their own fields. */
export const hourSchema = z
  .strictObject({
    time,
    temperatureC,
    pressureHpa: pressureHpa.optional().describe('Station pressure [hPa].'),
    altimeterHpa: pressureHpa.optional(),
    seaLevelHpa: pressureHpa.optional(),
    relativeHumidity: relativeHumidity.optional(),
    dewPointC: z.number().min(-100).max(60).optional(),
    pressureConfirmed: pressureConfirmed.optional(),
    ...skyFields,
  })
  .superRefine(refuseTwoOfOne, ALSO_WHEN_INCOMPLETE)
  .meta({ id: 'Hour' });

export type HourJson = z.output<typeof hourSchema>;

export const readingSchema = z
  .strictObject({
    id: z.string().min(1).max(64).optional(),
    time,
    temperatureC,
    pressureHpa: pressureHpa.optional().describe('Station pressure [hPa].'),
    relativeHumidity: relativeHumidity.optional(),
    confirmed: z
      .boolean()
      .default(false)
      .describe('True where a reading far from the hours has been confirmed by the person.'),
    from: nameText
      .optional()
      .describe('Station it was observed at, already moved to the height of the site; left out: the track.'),
    temperatureSdK: z
      .number()
      .min(0.1, 'expected 0.1 to 20')
      .max(20, 'expected 0.1 to 20')
      .optional()
      .describe('Standard deviation for the site [K]; that of a thermometer at the track where left out.'),
    pressureSdHpa: z
      .number()
      .min(0.1, 'expected 0.1 to 50')
      .max(50, 'expected 0.1 to 50')
      .optional()
      .describe('Standard deviation for the site [hPa]; that of a barometer at the track where left out.'),
  })
  .meta({ id: 'Reading' });

export type ReadingJson = z.output<typeof readingSchema>;
