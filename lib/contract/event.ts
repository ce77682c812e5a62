import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import { zoneExists } from '@/lib/time/zone';
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
  mains: z.array(jetSize).check(z.minLength(1), z.maxLength(6)),
  trim: z._default(z.nullable(z.int()), null),
});

const runSchema = z.strictObject({
  name: nameText,
  start: time,
  end: time,
  weight: z._default(z.number().check(z.minimum(0), z.maximum(100)), 1),
  typicalSeconds: z
    .optional(z.number().check(z.minimum(0.1, 'expected 0.1 to 86400'), z.maximum(86_400)))
    .check(about('Typical time over a fixed distance; gives the price of a swap in seconds.')),
});

export const placeSchema = z.strictObject({
  name: z._default(z.string().check(z.overwrite(withoutDirections), z.maxLength(120)), ''),
  latitude: z.number().check(z.minimum(-90, 'expected -90 to 90'), z.maximum(90, 'expected -90 to 90')),
  longitude: z
    .number()
    .check(z.minimum(-180, 'expected -180 to 180'), z.maximum(180, 'expected -180 to 180')),
});

const timezoneSchema = z
  .string()
  .check(
    z.maxLength(64),
    z.refine(zoneExists, { message: 'not an IANA time zone, such as America/Chicago' }),
  );

export const eventSchema = z
  .strictObject({
    name: nameText,
    timezone: timezoneSchema,
    place: z.optional(placeSchema),
    elevationM,
    runs: z.array(runSchema).check(z.maxLength(60, 'at most 60 runs')),
    swapMinutes: z._default(
      z.number().check(z.minimum(0, 'expected 0 to 600'), z.maximum(600, 'expected 0 to 600')),
      DEFAULT_OPTIONS.swapMinutes,
    ),
    ride: z
      ._default(z.boolean(), false)
      .check(about('One setting for all runs: a ride has no stop to swap in.')),
  })
  .register(z.globalRegistry, { id: 'Event' });

/** What the place of an event is asked for by hand. */
export const placeOfEventSchema = z.required(z.pick(eventSchema, { place: true, elevationM: true }));

export type EventJson = z.output<typeof eventSchema>;
export type RunJson = z.output<typeof runSchema>;
export type PlaceJson = z.output<typeof placeSchema>;
export type SettingJson = z.output<typeof settingSchema>;

/** One hour as typed or sent. Pressure is station pressure where given; altimeter and sea-level kinds have their own fields. */
export const hourSchema = z
  .strictObject({
    time,
    temperatureC,
    pressureHpa: z.optional(pressureHpa).check(about('Station pressure [hPa].')),
    altimeterHpa: z.optional(pressureHpa),
    seaLevelHpa: z.optional(pressureHpa),
    relativeHumidity: z.optional(relativeHumidity),
    dewPointC: z.optional(z.number().check(z.minimum(-100), z.maximum(60))),
    pressureConfirmed: z.optional(pressureConfirmed),
    ...skyFields,
  })
  .check(z.superRefine(refuseTwoOfOne, ALSO_WHEN_INCOMPLETE))
  .register(z.globalRegistry, { id: 'Hour' });

export type HourJson = z.output<typeof hourSchema>;

export const readingSchema = z
  .strictObject({
    id: z.optional(z.string().check(z.minLength(1), z.maxLength(64))),
    time,
    temperatureC,
    pressureHpa: z.optional(pressureHpa).check(about('Station pressure [hPa].')),
    relativeHumidity: z.optional(relativeHumidity),
    confirmed: z
      ._default(z.boolean(), false)
      .check(about('True where a reading far from the hours has been confirmed by the person.')),
    from: z
      .optional(nameText)
      .check(
        about('Station it was observed at, already moved to the height of the site; left out: the track.'),
      ),
    temperatureSdK: z
      .optional(z.number().check(z.minimum(0.1, 'expected 0.1 to 20'), z.maximum(20, 'expected 0.1 to 20')))
      .check(
        about('Standard deviation for the site [K]; that of a thermometer at the track where left out.'),
      ),
    pressureSdHpa: z
      .optional(z.number().check(z.minimum(0.1, 'expected 0.1 to 50'), z.maximum(50, 'expected 0.1 to 50')))
      .check(
        about('Standard deviation for the site [hPa]; that of a barometer at the track where left out.'),
      ),
  })
  .register(z.globalRegistry, { id: 'Reading' });

export type ReadingJson = z.output<typeof readingSchema>;
