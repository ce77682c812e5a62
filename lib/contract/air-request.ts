import * as z from 'zod';
import { airStateSchema } from './air';
import { airAnswerSchema } from './air-answer';

const MOST_STATES = 100_000;

export const airRequestSchema = z
  .strictObject({
    states: z
      .array(airStateSchema)
      .min(1, 'send at least one state')
      .max(MOST_STATES, 'at most 100000 states in one call'),
  })
  .meta({ id: 'AirRequest' });

const airNoteSchema = z.strictObject({
  code: z.enum(['humidity-assumed', 'pressure-is-estimate', 'pressure-in-doubt']),
  states: z.int().min(1).describe('How many of the states this is about.'),
  message: z.string(),
});

export const airsAnswerSchema = z
  .strictObject({
    states: z.array(airAnswerSchema).describe('In the order they were sent.'),
    warnings: z.array(airNoteSchema),
  })
  .meta({ id: 'Airs' });

export type AirRequestJson = z.output<typeof airRequestSchema>;
export type AirsAnswer = z.output<typeof airsAnswerSchema>;
export type AirNote = z.output<typeof airNoteSchema>;
