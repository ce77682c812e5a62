import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import { ELEVATION_UNITS, PRESSURE_UNITS, TEMPERATURE_UNITS } from '@/lib/units/choice';
import { ALSO_WHEN_INCOMPLETE } from './also-when-incomplete';
import { eventSchema, hourSchema, placeSchema, readingSchema, settingSchema } from './event';
import { machineSchema } from './machine';
import { time } from './numbers';
import { placeOffsetSchema } from './place-offset';

/** Bounds that keep one call's work small; an event of a season's length is split by whoever sends it. */
export const LIMITS = { machines: 100, hours: 400, readings: 500, scenarios: 256 } as const;

const madeSchema = z.strictObject({
  run: z.int().check(z.minimum(0), about('Index into event.runs, from 0.')),
  setting: settingSchema,
});

const engineFields = {
  fitted: z.optional(settingSchema).check(about('What is in the engine now; the baseline where not told.')),
  accepted: z
    .optional(z.array(settingSchema).check(z.maxLength(60)))
    .check(
      about(
        'The plan already accepted, one setting per run of event.runs; kept unless a new one is clearly better.',
      ),
    ),
  outFrom: z.optional(time).check(about('From then on the machine runs no more.')),
  made: z
    .optional(z.array(madeSchema).check(z.maxLength(60)))
    .check(about('Runs already made; the plan leaves them alone.')),
};

/** One engine, what is in it, and what was decided and done so far. */
export const planEntrySchema = z
  .strictObject({ machine: machineSchema, ...engineFields })
  .register(z.globalRegistry, { id: 'PlanEntry' });

export const planOptionsSchema = z
  .strictObject({
    seed: z
      .optional(z.int().check(z.minimum(0), z.maximum(2_147_483_647)))
      .check(about('The same input with the same seed gives the same plan.')),
    scenarios: z.optional(
      z.int().check(z.minimum(16, 'expected 16 to 256'), z.maximum(LIMITS.scenarios, 'expected 16 to 256')),
    ),
    worthItPercent: z
      .optional(z.number().check(z.minimum(0, 'expected 0 to 20'), z.maximum(20, 'expected 0 to 20')))
      .check(
        about(
          'Power a swap must save, added up over the runs it serves; stands above swapWorthPercent of every machine.',
        ),
      ),
    units: z
      .optional(
        z.strictObject({
          temperature: z._default(z.enum(TEMPERATURE_UNITS), 'C'),
          pressure: z._default(z.enum(PRESSURE_UNITS), 'hPa'),
          elevation: z._default(z.enum(ELEVATION_UNITS), 'm'),
        }),
      )
      .check(about('Units of the sentences; numbers keep the unit in their name.')),
  })
  .register(z.globalRegistry, { id: 'PlanOptions' });

export const planRequestSchema = z
  .strictObject({
    machine: z.optional(machineSchema).check(about('One machine. For several, send machines.')),
    ...engineFields,
    machines: z.optional(
      z
        .array(planEntrySchema)
        .check(z.minLength(1), z.maxLength(LIMITS.machines, 'at most 100 machines in one call')),
    ),
    event: eventSchema,
    hours: z
      .optional(z.array(hourSchema).check(z.maxLength(LIMITS.hours, 'at most 400 hours')))
      .check(
        about('The hours to plan with. Left out, a forecast is fetched for place, or else for event.place.'),
      ),
    place: z.optional(placeSchema).check(about('Where to fetch a forecast for, instead of hours.')),
    readings: z._default(
      z.array(readingSchema).check(z.maxLength(LIMITS.readings, 'at most 500 readings')),
      [],
    ),
    placeOffset: z
      .optional(placeOffsetSchema)
      .check(about('What past nights taught about event.place; without a place it is not used.')),
    now: z
      .optional(time)
      .check(about('The moment of planning; the clock, but not after the first run starts, where not told.')),
    options: z._default(planOptionsSchema, {}),
  })
  .check(
    z.superRefine((body, context) => {
      const refuse = (field: string, message: string) =>
        context.addIssue({ code: 'custom', path: [field], message });
      if (body.hours !== undefined && body.place !== undefined)
        refuse('place', 'send hours or place, not both');
      if (body.hours === undefined && siteOf(body) === null)
        refuse('hours', 'is missing: send hours, or a place to fetch a forecast for');
      if (body.machine === undefined && body.machines === undefined)
        refuse('machine', 'is missing: send machine, or machines');
      if (body.machines === undefined) return;
      if (body.machine !== undefined) refuse('machines', 'send machine or machines, not both');
      for (const field of ['fitted', 'accepted', 'made', 'outFrom'] as const)
        if (body[field] !== undefined) refuse(field, 'belongs inside each entry of machines');
    }, ALSO_WHEN_INCOMPLETE),
  )
  .register(z.globalRegistry, { id: 'PlanRequest' });

export type PlanRequestJson = z.output<typeof planRequestSchema>;
export type PlanEntryJson = z.output<typeof planEntrySchema>;

type Site = { readonly latitude: number; readonly longitude: number };

/** Where a forecast is to be fetched for where no hours were sent; null where nowhere was named. */
export function siteOf(body: {
  readonly place?: Site | undefined;
  readonly event?: { readonly place?: Site | undefined } | undefined;
}): Site | null {
  return body.place ?? body.event?.place ?? null;
}

export type PlacedEntry = { readonly entry: PlanEntryJson; readonly path: readonly (string | number)[] };

/** The engines of a request with where each sits in it: at the top for one, in the list for several. */
export function entriesOf(body: PlanRequestJson): readonly PlacedEntry[] {
  if (body.machines !== undefined) return body.machines.map((entry, i) => ({ entry, path: ['machines', i] }));
  const { machine, fitted, accepted, made, outFrom } = body;
  return machine === undefined ? [] : [{ entry: { machine, fitted, accepted, made, outFrom }, path: [] }];
}
