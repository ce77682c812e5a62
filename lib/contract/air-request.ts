import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import { airStateSchema } from './air';
import { airAnswerSchema } from './air-answer';

const MOST_STATES = 100_000;

export const airRequestSchema = z
  .strictObject({
    states: z
      .array(airStateSchema)
      .check(
        z.minLength(1, 'send at least one state'),
        z.maxLength(MOST_STATES, 'at most 100000 states in one call'),
      ),
  })
  .register(z.globalRegistry, { id: 'AirRequest' });

const airNoteSchema = z.strictObject({
  code: z.enum(['humidity-assumed', 'pressure-is-estimate', 'pressure-in-doubt']),
  states: z.int().check(z.minimum(1), about('How many of the states this is about.')),
  message: z.string(),
});

export const airsAnswerSchema = z
  .strictObject({
    states: z.array(airAnswerSchema).check(about('In the order they were sent.')),
    warnings: z.array(airNoteSchema),
  })
  .register(z.globalRegistry, { id: 'Airs' });

export type AirRequestJson = z.output<typeof airRequestSchema>;
export type AirsAnswer = z.output<typeof airsAnswerSchema>;
export type AirNote = z.output<typeof airNoteSchema>;
