import * as z from 'zod';
import { airAnswerSchema } from './air-answer';
import { settingSchema } from './event';

const moment = z.iso.datetime({ offset: true }).describe("With the offset of the event's zone.");
const share = z.number().min(0).max(1);
const setting = settingSchema.describe(
  'Main jets by carburettor, and the trim position where there is a trim circuit.',
);
const runIndex = z.int().min(0).describe('Index into runs of this answer, from 0.');
const driftState = z.enum(['lean', 'right', 'rich']);

const leanCount = z.strictObject({ lean: z.int(), of: z.int() });
const runGrade = z
  .enum(['good', 'rich', 'lean', 'drowned'])
  .describe('lean: over the accepted risk; drowned: so rich that it may not run; rich: costs power only.');

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
  source: z
    .strictObject({
      temperatureBy: z.string().nullable().describe('The service; null: typed or sent.'),
      pressureBy: z.string().nullable().describe('The service; null: typed, sent or estimated.'),
      pressureIsEstimate: z.boolean().describe('The standard atmosphere stands in.'),
      madeAt: moment.nullable().describe('Of the forecast in it: issued, or fetched where not said.'),
      words: z.string(),
    })
    .describe('Who told this hour.'),
  air: airAnswerSchema.describe('As the readings correct it.'),
  given: z
    .strictObject({ temperatureC: z.number(), stationPressureHpa: z.number(), relativeHumidity: z.number() })
    .describe('As it was forecast or sent, before any reading.'),
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
  state: z
    .enum(['made', 'past', 'planned', 'out', 'beyond-hours'])
    .describe('past: it has begun and nobody said on what; setting is then what was last said to be in.'),
  grade: runGrade,
  ifKept: z
    .strictObject({ grade: runGrade, leanCount })
    .describe('The run on what is in now, were nothing changed.'),
  setting,
  air: airAnswerSchema.describe('In the middle of the run, as the readings correct it.'),
  givenTemperatureC: z.number().describe('Its temperature as the hours gave it, before any reading.'),
  ideal: z.array(z.number()),
  leanestPercent: z.number(),
  richestPercent: z.number(),
  reservePercent: z.number().describe('How far the leanest moment stands from the lean limit.'),
  chanceOfLean: share,
  leanCount,
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
  readyBy: moment.describe('The start of the run it is for; latestStart is when to begin at the latest.'),
  reason: z.strictObject({
    code: z.enum(['old-turns-lean', 'old-drowned', 'old-turns-rich', 'power', 'as-accepted']),
    run: runIndex.optional().describe('The first run the old setting leaves its limit in.'),
    leanCount: leanCount.optional(),
    gainPercent: z.number().optional(),
  }),
  ifSkipped: z.strictObject({ chanceOfLean: share, leanCount, lossPercent: z.number() }),
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

const standingSchema = z
  .strictObject({
    inNow: z.strictObject({
      setting,
      known: z.enum(['told', 'baseline']).describe('baseline: nobody said what is in.'),
    }),
    state: driftState.nullable().describe('Of what is in, in the air of now; null where no hour says so.'),
    driftPercent: z.number().nullable(),
    question: z
      .strictObject({ from: setting, to: setting, beforeRun: runIndex, since: moment, words: z.string() })
      .nullable()
      .describe('An accepted swap whose time is over and that nobody confirmed; from counts as in.'),
    job: z.strictObject({
      kind: z.enum(['swap', 'hold', 'do-not-race', 'no-hours', 'out', 'over']),
      swap: z.int().min(0).nullable().describe('Index into swaps.'),
    }),
    dangers: z.array(
      z.strictObject({
        grade: z.enum(['lean', 'drowned']),
        why: z.enum(['no-jet', 'no-time']),
        runs: z.array(runIndex),
        borrow: z.array(z.number()).nullable(),
        words: z.string(),
      }),
    ),
    risk: z.string().describe('The risk of what is to come, in counts.'),
    reading: z
      .strictObject({
        run: runIndex,
        at: moment.describe('As late as leaves time to swap by it.'),
        temperatureSdBeforeC: z.number(),
        temperatureSdAfterC: z.number(),
        words: z.string(),
      })
      .nullable()
      .describe(
        'A reading at the track that pays now, and how well it would tell the temperature of a run: one standard deviation without it and with it.',
      ),
  })
  .describe('What is true now and what to do next.');

export const planAnswerSchema = z
  .strictObject({
    machine: z.string(),
    call: z.string().describe('The plan in a few sentences; what must be heard first comes first.'),
    standing: standingSchema,
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
    swapWorthPercent: z
      .number()
      .describe('Power a swap had to save in this plan, added up over the runs it serves.'),
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
