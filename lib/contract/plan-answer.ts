import { z } from 'zod';
import { airAnswerSchema } from './air-answer';
import { settingSchema } from './event';

const moment = z.iso.datetime({ offset: true }).describe("With the offset of the event's zone.");
const share = z.number().min(0).max(1);
const setting = settingSchema.describe(
  'Main jets by carburettor, and the trim position where there is a trim circuit.',
);
const runIndex = z.int().min(0).describe('Index into runs of this answer, from 0.');
const driftState = z.enum(['lean', 'right', 'rich']);

const crossingSchema = z.strictObject({
  time: moment,
  earliest: moment.describe('10 % of the forecasts are earlier.'),
  latest: moment
    .nullable()
    .describe('90 % of the forecasts are earlier; null where in one of ten it does not happen.'),
  to: driftState,
});

const planHourSchema = z.strictObject({
  time: moment,
  origin: z.enum(['forecast', 'typed', 'between', 'filled']),
  air: airAnswerSchema,
  temperatureSdC: z.number(),
  ideal: z.array(z.number()).describe('Ideal jet size by carburettor, between the sizes that exist.'),
  idealLow: z.array(z.number()),
  idealHigh: z.array(z.number()),
  baselineDriftPercent: z
    .number()
    .describe("Mixture of the baseline's jets against the baseline; - is lean."),
  baselineState: driftState,
  driftPercent: z.number().describe('The same for the jets the plan has in the engine.'),
  chanceOfLean: share,
  relativePower: z.number(),
});

const planRunSchema = z.strictObject({
  name: z.string(),
  start: moment,
  end: moment,
  sentRun: z.int().min(0).describe('Index of this run in event.runs as sent.'),
  state: z.enum(['made', 'planned', 'beyond-hours']),
  setting,
  air: airAnswerSchema,
  ideal: z.array(z.number()),
  leanestPercent: z.number(),
  richestPercent: z.number(),
  reservePercent: z.number().describe('How far the leanest moment stands from the lean limit.'),
  chanceOfLean: share,
  leanCount: z.strictObject({ lean: z.int(), of: z.int() }),
  chanceOfRich: share,
  lossPercent: z.number(),
  relativePower: z.number(),
});

const swapSchema = z.strictObject({
  beforeRun: runIndex,
  from: setting,
  to: setting,
  kind: z.enum(['jets', 'trim']),
  windowStart: moment,
  latestStart: moment,
  due: crossingSchema.nullable(),
  reason: z.strictObject({
    code: z.enum(['old-turns-lean', 'old-turns-rich', 'power']),
    chance: share.optional(),
    gainPercent: z.number().optional(),
  }),
  ifSkipped: z.strictObject({ chanceOfLean: share, lossPercent: z.number() }),
  words: z.string(),
});

const bySwapCountSchema = z.strictObject({
  swaps: z.int().min(0),
  settings: z.array(setting),
  leanRunsOverRisk: z.int().min(0),
  richRuns: z.int().min(0),
  lossPercent: z.number(),
  secondsLost: z.number().nullable(),
});

export const planAnswerSchema = z
  .strictObject({
    machine: z.string(),
    call: z.string().describe('The plan in a few sentences; what must be heard first comes first.'),
    now: moment.describe('The moment the plan was made for.'),
    source: z
      .strictObject({
        name: z.string().describe("The service's name, or 'typed' for hours that were sent."),
        attribution: z.string().describe('The credit line the service asks for; to be shown with the plan.'),
        attributionUrl: z.string().nullable(),
        issuedAt: moment.nullable(),
        fetchedAt: moment.nullable(),
      })
      .describe('Where the hours came from.'),
    hours: z.array(planHourSchema),
    crossings: z
      .array(crossingSchema)
      .describe('When the baseline setting itself turns lean, right or rich.'),
    runs: z.array(planRunSchema),
    stints: z.array(z.strictObject({ setting, firstRun: runIndex, lastRun: runIndex })),
    swaps: z.array(swapSchema),
    bySwapCount: z.array(bySwapCountSchema).describe('The best plan with each number of swaps.'),
    runnerUp: z.strictObject({ settings: z.array(setting), marginPercent: z.number() }).nullable(),
    kept: z
      .boolean()
      .describe('True where the accepted plan was kept although a new one would differ a little.'),
    hoursEnd: moment,
    baseline: setting,
    warnings: z
      .array(z.strictObject({ code: z.string(), message: z.string() }))
      .describe(
        'A code that ends in pressure-in-doubt asks whether a number is what it was sent as: send it under its own name, or stand by it with pressureConfirmed (a reading: confirmed).',
      ),
  })
  .meta({ id: 'Plan' });

export const plansAnswerSchema = z.strictObject({ plans: z.array(planAnswerSchema) }).meta({ id: 'Plans' });

export type PlanAnswer = z.output<typeof planAnswerSchema>;
export type CrossingAnswer = z.output<typeof crossingSchema>;
