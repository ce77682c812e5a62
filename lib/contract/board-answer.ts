import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import { settingSchema } from './event';

const moment = z.iso.datetime({ offset: true });

const boardJobSchema = z.strictObject({
  kind: z.enum(['swap', 'hold', 'do-not-race', 'no-hours', 'out', 'over']),
  lead: z.string().check(about('The one thing to do next, in a few words.')),
  window: z.nullable(z.string()).check(about('From when to when, on the clock of the event.')),
  lines: z.array(z.string()),
  windowStart: z.nullable(moment),
  latestStart: z.nullable(moment).check(about('When to begin at the latest.')),
  done: z
    .nullable(z.strictObject({ label: z.string(), setting: settingSchema }))
    .check(about('What to send to done once it is in; null while it is too early to ask.')),
});

const boardRunSchema = z.strictObject({
  name: z.string(),
  start: moment,
  state: z.enum(['made', 'past', 'planned', 'out', 'beyond-hours']),
  setting: z.string(),
  grade: z
    .nullable(z.enum(['good', 'rich', 'lean', 'drowned']))
    .check(about('null: nothing is known of it.')),
});

const boardMachineAnswerSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  problem: z.nullable(z.string()).check(about('Why it has no plan; the fields below are then empty.')),
  inNow: z.string().check(about('What is in the engine, in words.')),
  known: z.boolean().check(about('False: nobody said so, the baseline stands for it.')),
  state: z.nullable(z.enum(['lean', 'right', 'rich'])).check(about('Of what is in, in the air of now.')),
  driftPercent: z.nullable(z.number()),
  lateByMinutes: z.int().check(about('How much later its next run starts than when the night was posted.')),
  question: z
    .nullable(
      z.strictObject({
        ask: z.string(),
        meaning: z.string(),
        answers: z.array(z.strictObject({ label: z.string(), setting: settingSchema, at: moment })),
      }),
    )
    .check(about('A swap that nobody confirmed. Ask it before anything else.')),
  dangers: z.array(z.string()),
  risk: z.string(),
  job: z.nullable(boardJobSchema),
  runs: z.array(boardRunSchema),
});

const boardKeeperSchema = z.strictObject({
  followers: z.array(z.strictObject({ machine: z.string(), phones: z.int() })),
  told: z
    .array(
      z.strictObject({
        at: moment,
        machine: z.string(),
        title: z.string(),
        body: z.string(),
        phones: z.int().check(about('How many it was to go to.')),
        reached: z.int().check(about('How many push services have taken it.')),
      }),
    )
    .check(about('Newest first.')),
});

export const boardAnswerSchema = z
  .strictObject({
    id: z.string(),
    revision: z.int(),
    event: z.strictObject({ name: z.string(), timezone: z.string() }),
    postedAt: moment,
    plannedAt: moment,
    expiresAt: moment,
    hours: z.strictObject({
      age: z.enum(['fresh', 'ageing', 'stale', 'typed', 'part typed', 'none']),
      madeAt: z.nullable(moment),
      attribution: z.string(),
    }),
    air: z
      .nullable(
        z.strictObject({ temperatureC: z.number(), pressureHpa: z.number(), relativeHumidity: z.number() }),
      )
      .check(about('At the track when it was planned.')),
    machines: z.array(boardMachineAnswerSchema),
    pushKey: z.nullable(z.string()).check(about('For PushManager.subscribe; null: this server sends none.')),
    keeper: z.nullable(boardKeeperSchema).check(about("Only with the keeper's secret.")),
    night: z
      .optional(
        z.looseObject({
          machines: z.array(
            z.looseObject({
              id: z.optional(z.string()),
              fittings: z.array(z.object({ at: z.string(), setting: settingSchema })),
            }),
          ),
        }),
      )
      .check(about("The night as it was posted and changed since; only with the keeper's secret.")),
  })
  .register(z.globalRegistry, { id: 'Board' });

export type BoardAnswer = z.output<typeof boardAnswerSchema>;
export type BoardMachineAnswer = BoardAnswer['machines'][number];
