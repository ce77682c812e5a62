import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import { CONTRADICTIONS } from './contradiction';
import { elevationM, pressureHpa, relativeHumidity, temperatureC, time } from './numbers';
import { skyFields } from './sky';
import { PRESSURE_SOURCES, SOURCE_NAMES } from './source-name';
import { webAddress } from './web-address';

/** A month of hours, and those of the day before that are kept with them. */
const MOST_HOURS = 1000;

const forecastHourSchema = z.strictObject({
  time,
  temperatureC,
  pressureHpa: pressureHpa.check(about('Station pressure at elevationM [hPa].')),
  pressureFrom: z
    .enum(['station', 'altimeter', 'sea-level', 'standard'])
    .check(about('What the station pressure was derived from; standard means it is an estimate.')),
  relativeHumidity,
  spreadK: z
    .nullable(z.number().check(z.minimum(0), z.maximum(40)))
    .check(about("Standard deviation of an ensemble's temperature [K].")),
  origin: z
    .enum(['forecast', 'typed', 'between', 'filled'])
    .check(about('filled: in a gap of at most six hours, on a curve through the hours around it.')),
  temperatureBy: z.enum(SOURCE_NAMES),
  pressureBy: z.enum(PRESSURE_SOURCES),
  ...skyFields,
});

/** Which hour does not come after the one before it is refused by its time. */
function refuseDisorder(hours: readonly { readonly time: string }[], context: z.core.$RefinementCtx): void {
  const at = hours.map((hour) => Date.parse(hour.time));
  const disorder = at.findIndex((each, i) => each <= (at[i - 1] ?? Number.NEGATIVE_INFINITY));
  if (disorder >= 0)
    context.addIssue({ code: 'custom', path: [disorder, 'time'], message: 'expected a later hour' });
}

/** Why a service was not used. */
const sourceProblemSchema = z.discriminatedUnion('code', [
  z.strictObject({
    code: z.enum([
      'timeout',
      'unreachable',
      'redirected',
      'too-large',
      'not-json',
      'busy',
      'no-pressure',
      'no-hours',
      'outside-area',
      'no-contact',
      'bad-address',
      'slow',
      ...CONTRADICTIONS,
    ]),
  }),
  z.strictObject({ code: z.literal('bad-status'), status: z.int() }),
  z.strictObject({ code: z.enum(['rate-limited', 'resting']), until: time }),
  z.strictObject({ code: z.literal('unexpected-shape'), field: z.string().check(z.maxLength(200)) }),
  z.strictObject({
    code: z.literal('wrong-units'),
    field: z.string().check(z.maxLength(200)),
    unit: z.string().check(z.maxLength(200)),
  }),
  z.strictObject({
    code: z.literal('implausible'),
    field: z.string().check(z.maxLength(200)),
    value: z.number(),
  }),
]);

/** A service that was asked and not used, and why. */
const sourceTrySchema = z.strictObject({ source: z.enum(SOURCE_NAMES), problem: sourceProblemSchema });

/** A forecast as our own API answers it, and as the browser keeps it. Its hours rise in time. */
export const forecastSchema = z
  .strictObject({
    latitude: z.number().check(z.minimum(-90), z.maximum(90)),
    longitude: z.number().check(z.minimum(-180), z.maximum(180)),
    elevationM,
    elevationFrom: z
      .enum(['given', 'service'])
      .check(about("service: the service's own height for the place.")),
    modelElevationM: z.nullable(z.number()),
    by: z.enum(SOURCE_NAMES),
    name: z.string().check(z.maxLength(80)),
    attribution: z.string().check(z.maxLength(400), about('To be shown with the hours.')),
    attributionUrl: z.nullable(webAddress),
    issuedAt: z
      .nullable(time)
      .check(about('When the forecast was made; null where the service does not say.')),
    fetchedAt: z.nullable(time),
    freshness: z
      .enum(['fresh', 'stale'])
      .check(about('stale: no service answered, this is the last good copy.')),
    freshUntil: time,
    tries: z
      .array(sourceTrySchema)
      .check(z.maxLength(20), about('Services that were asked and not used, and why.')),
    missing: z
      .array(time)
      .check(
        z.maxLength(MOST_HOURS),
        about('Hours the service lists without a value, in gaps too long to fill.'),
      ),
    leftOut: z
      .optional(
        z.array(z.strictObject({ time, code: z.enum(CONTRADICTIONS) })).check(z.maxLength(MOST_HOURS)),
      )
      .check(
        about('Hours the service gave that cannot be right, and why; filled or missing like any other gap.'),
      ),
    hours: z.array(forecastHourSchema).check(z.maxLength(MOST_HOURS), z.superRefine(refuseDisorder)),
  })
  .register(z.globalRegistry, { id: 'Forecast' });

export type ForecastJson = z.output<typeof forecastSchema>;

/** A short name or a reason that a later app may know and this one may not. */
const openName = z.string().check(z.maxLength(40));

/**
 * The same as the browser keeps it. No service need stand behind it, since hours also come with a shared night; and a
 * name that only a later app knows must not make it unreadable.
 */
export const keptForecastSchema = z.strictObject({
  ...z.partial(forecastSchema, { elevationFrom: true, freshness: true, freshUntil: true, missing: true })
    .shape,
  by: z.optional(openName),
  tries: z.optional(
    z
      .array(
        z.strictObject({
          source: openName,
          problem: z.strictObject({
            code: openName,
            status: z.optional(z.int()),
            until: z.optional(time),
            field: z.optional(z.string().check(z.maxLength(200))),
            unit: z.optional(z.string().check(z.maxLength(200))),
            value: z.optional(z.number()),
          }),
        }),
      )
      .check(z.maxLength(20)),
  ),
  leftOut: z.optional(z.array(z.strictObject({ time, code: openName })).check(z.maxLength(MOST_HOURS))),
  hours: z
    .array(
      z.extend(forecastHourSchema, { temperatureBy: z.optional(openName), pressureBy: z.optional(openName) }),
    )
    .check(z.maxLength(MOST_HOURS), z.superRefine(refuseDisorder)),
});

export type KeptForecastJson = z.output<typeof keptForecastSchema>;
