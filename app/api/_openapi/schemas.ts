import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import { airStateSchema } from '@/lib/contract/air';
import { airAnswerSchema } from '@/lib/contract/air-answer';
import { airRequestSchema, airsAnswerSchema } from '@/lib/contract/air-request';
import {
  boardDoneSchema,
  boardPatchSchema,
  boardPostedSchema,
  boardPostSchema,
  boardSubscriptionSchema,
  boardUnsubscribeSchema,
} from '@/lib/contract/board';
import { boardAnswerSchema } from '@/lib/contract/board-answer';
import { eventSchema, hourSchema, readingSchema } from '@/lib/contract/event';
import { forecastSchema } from '@/lib/contract/forecast';
import { machineSchema } from '@/lib/contract/machine';
import { ownAddressesSchema } from '@/lib/contract/own-addresses';
import { placeOffsetSchema } from '@/lib/contract/place-offset';
import { planAnswerSchema, plansAnswerSchema } from '@/lib/contract/plan-answer';
import { planEntrySchema, planOptionsSchema, planRequestSchema } from '@/lib/contract/plan-request';
import { historyJsonSchema, pastAirJsonSchema } from '@/lib/weather/history-json';
import { observationsJsonSchema } from '@/lib/weather/observations-json';
import { placesJsonSchema } from '@/lib/weather/places-json';

const healthSchema = z.strictObject({ status: z.literal('ok') });

const readySchema = z.strictObject({
  ready: z.boolean(),
  checks: z.record(z.string(), z.boolean()).check(about('What has to hold, by name.')),
  version: z.string(),
  commit: z.nullable(z.string()).check(about('The commit it was built from, where that is known.')),
  build: z.nullable(z.string()).check(about('The same for all servers with the same files.')),
});

const problemSchema = z
  .strictObject({
    type: z.literal('about:blank'),
    title: z.string(),
    status: z.int(),
    detail: z.string().check(about('What is wrong and what to do, in words.')),
    errors: z.optional(
      z.array(
        z.strictObject({
          path: z.string().check(about('Where the bad field is: machine.box[2].size.')),
          pointer: z.string().check(about('The same as an RFC 6901 pointer.')),
          code: z.string(),
          detail: z.string(),
        }),
      ),
    ),
  })
  .check(about('RFC 9457 problem details.'));

/** What callers send, where defaults may be left out, and what they get, where they are filled in. */
const SENT = {
  AirState: airStateSchema,
  AirRequest: airRequestSchema,
  BoardDone: boardDoneSchema,
  BoardPatch: boardPatchSchema,
  BoardPost: boardPostSchema,
  BoardSubscription: boardSubscriptionSchema,
  BoardUnsubscribe: boardUnsubscribeSchema,
  Event: eventSchema,
  Hour: hourSchema,
  Machine: machineSchema,
  PlaceOffset: placeOffsetSchema,
  PlanEntry: planEntrySchema,
  PlanOptions: planOptionsSchema,
  PlanRequest: planRequestSchema,
  Reading: readingSchema,
} as const;

const ANSWERED = {
  Air: airAnswerSchema,
  Airs: airsAnswerSchema,
  Board: boardAnswerSchema,
  BoardPosted: boardPostedSchema,
  Forecast: forecastSchema,
  Health: healthSchema,
  History: historyJsonSchema,
  OwnAddresses: ownAddressesSchema,
  PastAir: pastAirJsonSchema,
  Places: placesJsonSchema,
  Plan: planAnswerSchema,
  Plans: plansAnswerSchema,
  Problem: problemSchema,
  Ready: readySchema,
  Stations: observationsJsonSchema,
} as const;

export type SchemaName = keyof typeof SENT | keyof typeof ANSWERED;

export const schemaAddress = (name: SchemaName): string => `#/components/schemas/${name}`;

/**
 * What counts where a field is left out, told in words: a client made from the document takes a field with a `default`
 * for one that is always there, and then asks for it in what is sent.
 */
function tellDefault({ jsonSchema }: { readonly jsonSchema: z.core.JSONSchema.BaseSchema }): void {
  if (jsonSchema.default === undefined) return;
  const told = `Left out, it is ${JSON.stringify(jsonSchema.default)}.`;
  jsonSchema.description = jsonSchema.description === undefined ? told : `${jsonSchema.description} ${told}`;
  delete jsonSchema.default;
}

/** The JSON Schema dialect OpenAPI 3.1 uses is zod's own default, so the schemas go in nearly as they are. */
export function componentSchemas(): Readonly<Record<string, object>> {
  return { ...jsonSchemas(SENT, 'input'), ...jsonSchemas(ANSWERED, 'output') };
}

function jsonSchemas(
  named: Readonly<Record<string, z.ZodMiniType>>,
  io: 'input' | 'output',
): Record<string, object> {
  const registry = z.registry<{ id: string }>();
  for (const [id, schema] of Object.entries(named)) registry.add(schema, { id });
  const { schemas } = z.toJSONSchema(registry, {
    io,
    uri: (id) => `#/components/schemas/${id}`,
    ...(io === 'input' ? { override: tellDefault } : {}),
  });
  // Inside one document the place of a schema is its name; an $id of its own would make its references relative to it.
  return Object.fromEntries(
    Object.entries(schemas).map(([name, { $id: _, $schema: __, ...schema }]) => [name, schema]),
  );
}
