import { z } from 'zod';
import { settingSchema } from './event';

const moment = z.iso.datetime({ offset: true });

const boardJobSchema = z.strictObject({
  kind: z.enum(['swap', 'hold', 'do-not-race', 'no-hours', 'out', 'over']),
  lead: z.string().describe('The one thing to do next, in a few words.'),
  window: z.string().nullable().describe('From when to when, on the clock of the event.'),
  lines: z.array(z.string()),
  windowStart: moment.nullable(),
  latestStart: moment.nullable().describe('When to begin at the latest.'),
  done: z
    .strictObject({ label: z.string(), setting: settingSchema })
    .nullable()
    .describe('What to send to done once it is in; null while it is too early to ask.'),
});

const boardRunSchema = z.strictObject({
  name: z.string(),
  start: moment,
  state: z.enum(['made', 'past', 'planned', 'out', 'beyond-hours']),
  setting: z.string(),
  grade: z.enum(['good', 'rich', 'lean', 'drowned']).nullable().describe('null: nothing is known of it.'),
});

const boardMachineAnswerSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  problem: z.string().nullable().describe('Why it has no plan; the fields below are then empty.'),
  inNow: z.string().describe('What is in the engine, in words.'),
  known: z.boolean().describe('False: nobody said so, the baseline stands for it.'),
  state: z.enum(['lean', 'right', 'rich']).nullable().describe('Of what is in, in the air of now.'),
  driftPercent: z.number().nullable(),
  lateByMinutes: z.int().describe('How much later its next run starts than when the night was posted.'),
  question: z
    .strictObject({
      ask: z.string(),
      meaning: z.string(),
      answers: z.array(z.strictObject({ label: z.string(), setting: settingSchema, at: moment })),
    })
    .nullable()
    .describe('A swap that nobody confirmed. Ask it before anything else.'),
  dangers: z.array(z.string()),
  risk: z.string(),
  job: boardJobSchema.nullable(),
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
        phones: z.int().describe('How many it was to go to.'),
        reached: z.int().describe('How many push services have taken it.'),
      }),
    )
    .describe('Newest first.'),
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
      madeAt: moment.nullable(),
      attribution: z.string(),
    }),
    air: z
      .strictObject({ temperatureC: z.number(), pressureHpa: z.number(), relativeHumidity: z.number() })
      .nullable()
      .describe('At the track when it was planned.'),
    machines: z.array(boardMachineAnswerSchema),
    pushKey: z.string().nullable().describe('For PushManager.subscribe; null: this server sends none.'),
    keeper: boardKeeperSchema.nullable().describe("Only with the keeper's secret."),
    night: z
      .looseObject({
        machines: z.array(
          z.looseObject({
            id: z.string().optional(),
            fittings: z.array(z.object({ at: z.string(), setting: settingSchema })),
          }),
        ),
      })
      .optional()
      .describe("The night as it was posted and changed since; only with the keeper's secret."),
  })
  .meta({ id: 'Board' });

export type BoardAnswer = z.output<typeof boardAnswerSchema>;
export type BoardMachineAnswer = BoardAnswer['machines'][number];
