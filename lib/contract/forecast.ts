import { z } from 'zod';
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
  pressureHpa: pressureHpa.describe('Station pressure at elevationM [hPa].'),
  pressureFrom: z
    .enum(['station', 'altimeter', 'sea-level', 'standard'])
    .describe('What the station pressure was derived from; standard means it is an estimate.'),
  relativeHumidity,
  spreadK: z
    .number()
    .min(0)
    .max(40)
    .nullable()
    .describe("Standard deviation of an ensemble's temperature [K]."),
  origin: z
    .enum(['forecast', 'typed', 'between', 'filled'])
    .describe('filled: in a gap of at most six hours, on a curve through the hours around it.'),
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
  z.strictObject({ code: z.literal('unexpected-shape'), field: z.string().max(200) }),
  z.strictObject({
    code: z.literal('wrong-units'),
    field: z.string().max(200),
    unit: z.string().max(200),
  }),
  z.strictObject({ code: z.literal('implausible'), field: z.string().max(200), value: z.number() }),
]);

/** A service that was asked and not used, and why. */
const sourceTrySchema = z.strictObject({ source: z.enum(SOURCE_NAMES), problem: sourceProblemSchema });

/** A forecast as our own API answers it, and as the browser keeps it. Its hours rise in time. */
export const forecastSchema = z
  .strictObject({
    latitude: z.number().min(-90).max(90),
    longitude: z.number().min(-180).max(180),
    elevationM,
    elevationFrom: z.enum(['given', 'service']).describe("service: the service's own height for the place."),
    modelElevationM: z.number().nullable(),
    by: z.enum(SOURCE_NAMES),
    name: z.string().max(80),
    attribution: z.string().max(400).describe('To be shown with the hours.'),
    attributionUrl: webAddress.nullable(),
    issuedAt: time.nullable().describe('When the forecast was made; null where the service does not say.'),
    fetchedAt: time.nullable(),
    freshness: z.enum(['fresh', 'stale']).describe('stale: no service answered, this is the last good copy.'),
    freshUntil: time,
    tries: z.array(sourceTrySchema).max(20).describe('Services that were asked and not used, and why.'),
    missing: z
      .array(time)
      .max(MOST_HOURS)
      .describe('Hours the service lists without a value, in gaps too long to fill.'),
    leftOut: z
      .array(z.strictObject({ time, code: z.enum(CONTRADICTIONS) }))
      .max(MOST_HOURS)
      .optional()
      .describe(
        'Hours the service gave that cannot be right, and why; filled or missing like any other gap.',
      ),
    hours: z.array(forecastHourSchema).max(MOST_HOURS).superRefine(refuseDisorder),
  })
  .meta({ id: 'Forecast' });

export type ForecastJson = z.output<typeof forecastSchema>;

/** A short name or a reason that a later app may know and this one may not. */
const openName = z.string().max(40);

/**
 * The same as the browser keeps it. No service need stand behind it, since hours also come with a shared night; and a
 * name that only a later app knows must not make it unreadable.
 */
export const keptForecastSchema = z.strictObject({
  ...forecastSchema.partial({ elevationFrom: true, freshness: true, freshUntil: true, missing: true }).shape,
  by: openName.optional(),
  tries: z
    .array(
      z.strictObject({
        source: openName,
        problem: z.strictObject({
          code: openName,
          status: z.int().optional(),
          until: time.optional(),
          field: z.string().max(200).optional(),
          unit: z.string().max(200).optional(),
          value: z.number().optional(),
        }),
      }),
    )
    .max(20)
    .optional(),
  leftOut: z
    .array(z.strictObject({ time, code: openName }))
    .max(MOST_HOURS)
    .optional(),
  hours: z
    .array(forecastHourSchema.extend({ temperatureBy: openName.optional(), pressureBy: openName.optional() }))
    .max(MOST_HOURS)
    .superRefine(refuseDisorder),
});

export type KeptForecastJson = z.output<typeof keptForecastSchema>;
