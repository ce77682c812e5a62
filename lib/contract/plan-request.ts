import * as z from 'zod';
import { ELEVATION_UNITS, PRESSURE_UNITS, TEMPERATURE_UNITS } from '@/lib/units/choice';
import { ALSO_WHEN_INCOMPLETE } from './also-when-incomplete';
import { eventSchema, hourSchema, placeSchema, readingSchema, settingSchema } from './event';
import { machineSchema } from './machine';
import { time } from './numbers';
import { placeOffsetSchema } from './place-offset';

/** Bounds that keep one call's work small; an event of a season's length is split by whoever sends it. */
export const LIMITS = { machines: 100, hours: 400, readings: 500, scenarios: 256 } as const;

const madeSchema = z.strictObject({
  run: z.int().min(0).describe('Index into event.runs, from 0.'),
  setting: settingSchema,
});

const engineFields = {
  fitted: settingSchema.optional().describe('What is in the engine now; the baseline where not told.'),
  accepted: z
    .array(settingSchema)
    .max(60)
    .optional()
    .describe(
      'The plan already accepted, one setting per run of event.runs; kept unless a new one is clearly better.',
    ),
  outFrom: time.optional().describe('From then on the machine runs no more.'),
  made: z.array(madeSchema).max(60).optional().describe('Runs already made; the plan leaves them alone.'),
};

/** One engine, what is in it, and what was decided and done so far. */
export const planEntrySchema = z
  .strictObject({ machine: machineSchema, ...engineFields })
  .meta({ id: 'PlanEntry' });

export const planOptionsSchema = z
  .strictObject({
    seed: z
      .int()
      .min(0)
      .max(2_147_483_647)
      .optional()
      .describe('The same input with the same seed gives the same plan.'),
    scenarios: z.int().min(16, 'expected 16 to 256').max(LIMITS.scenarios, 'expected 16 to 256').optional(),
    worthItPercent: z
      .number()
      .min(0, 'expected 0 to 20')
      .max(20, 'expected 0 to 20')
      .optional()
      .describe(
        'Power a swap must save, added up over the runs it serves; stands above swapWorthPercent of every machine.',
      ),
    units: z
      .strictObject({
        temperature: z.enum(TEMPERATURE_UNITS).default('C'),
        pressure: z.enum(PRESSURE_UNITS).default('hPa'),
        elevation: z.enum(ELEVATION_UNITS).default('m'),
      })
      .optional()
      .describe('Units of the sentences; numbers keep the unit in their name.'),
  })
  .meta({ id: 'PlanOptions' });

export const planRequestSchema = z
  .strictObject({
    machine: machineSchema.optional().describe('One machine. For several, send machines.'),
    ...engineFields,
    machines: z
      .array(planEntrySchema)
      .min(1)
      .max(LIMITS.machines, 'at most 100 machines in one call')
      .optional(),
    event: eventSchema,
    hours: z
      .array(hourSchema)
      .max(LIMITS.hours, 'at most 400 hours')
      .optional()
      .describe(
        'The hours to plan with. Left out, a forecast is fetched for place, or else for event.place.',
      ),
    place: placeSchema.optional().describe('Where to fetch a forecast for, instead of hours.'),
    readings: z.array(readingSchema).max(LIMITS.readings, 'at most 500 readings').default([]),
    placeOffset: placeOffsetSchema
      .optional()
      .describe('What past nights taught about event.place; without a place it is not used.'),
    now: time
      .optional()
      .describe('The moment of planning; the clock, but not after the first run starts, where not told.'),
    options: planOptionsSchema.default({}),
  })
  .superRefine((body, context) => {
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
  }, ALSO_WHEN_INCOMPLETE)
  .meta({ id: 'PlanRequest' });

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
