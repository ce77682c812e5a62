import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import { airAnswerSchema } from './air-answer';
import { settingSchema } from './event';

const moment = z.iso.datetime({ offset: true }).check(about("With the offset of the event's zone."));
const share = z.number().check(z.minimum(0), z.maximum(1));
const setting = settingSchema.check(
  about('Main jets by carburettor, and the trim position where there is a trim circuit.'),
);
const runIndex = z.int().check(z.minimum(0), about('Index into runs of this answer, from 0.'));
const driftState = z.enum(['lean', 'right', 'rich']);

const leanCount = z.strictObject({ lean: z.int(), of: z.int() });
const runGrade = z
  .enum(['good', 'rich', 'lean', 'drowned'])
  .check(
    about('lean: over the accepted risk; drowned: so rich that it may not run; rich: costs power only.'),
  );

const crossingSchema = z.strictObject({
  time: moment,
  earliest: moment.check(about('10 % of the forecasts are earlier.')),
  latest: z
    .nullable(moment)
    .check(about('90 % of the forecasts are earlier; null where in one of ten it does not happen.')),
  to: driftState,
});

const planHourSchema = z.strictObject({
  time: moment,
  origin: z.enum(['forecast', 'typed', 'between', 'filled']),
  source: z
    .strictObject({
      temperatureBy: z.nullable(z.string()).check(about('The service; null: typed or sent.')),
      pressureBy: z.nullable(z.string()).check(about('The service; null: typed, sent or estimated.')),
      pressureIsEstimate: z.boolean().check(about('The standard atmosphere stands in.')),
      madeAt: z.nullable(moment).check(about('Of the forecast in it: issued, or fetched where not said.')),
      words: z.string(),
    })
    .check(about('Who told this hour.')),
  air: airAnswerSchema.check(about('As the readings correct it.')),
  given: z
    .strictObject({ temperatureC: z.number(), stationPressureHpa: z.number(), relativeHumidity: z.number() })
    .check(about('As it was forecast or sent, before any reading.')),
  temperatureSdC: z.number(),
  ideal: z.array(z.number()).check(about('Ideal jet size by carburettor, between the sizes that exist.')),
  idealLow: z.array(z.number()),
  idealHigh: z.array(z.number()),
  baselineDriftPercent: z
    .number()
    .check(about("Mixture of the baseline's jets against the baseline; - is lean.")),
  baselineState: driftState,
  driftPercent: z.number().check(about('The same for the jets the plan has in the engine.')),
  chanceOfLean: share,
  relativePower: z.number(),
});

const planRunSchema = z.strictObject({
  name: z.string(),
  start: moment,
  end: moment,
  sentRun: z.int().check(z.minimum(0), about('Index of this run in event.runs as sent.')),
  state: z
    .enum(['made', 'past', 'planned', 'out', 'beyond-hours'])
    .check(about('past: it has begun and nobody said on what; setting is then what was last said to be in.')),
  grade: runGrade,
  ifKept: z
    .strictObject({ grade: runGrade, leanCount })
    .check(about('The run on what is in now, were nothing changed.')),
  setting,
  air: airAnswerSchema.check(about('In the middle of the run, as the readings correct it.')),
  givenTemperatureC: z.number().check(about('Its temperature as the hours gave it, before any reading.')),
  ideal: z.array(z.number()),
  leanestPercent: z.number(),
  richestPercent: z.number(),
  reservePercent: z.number().check(about('How far the leanest moment stands from the lean limit.')),
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
  readyBy: moment.check(about('The start of the run it is for; latestStart is when to begin at the latest.')),
  reason: z.strictObject({
    code: z.enum(['old-turns-lean', 'old-drowned', 'old-turns-rich', 'power', 'as-accepted']),
    run: z.optional(runIndex).check(about('The first run the old setting leaves its limit in.')),
    leanCount: z.optional(leanCount),
    gainPercent: z.optional(z.number()),
  }),
  ifSkipped: z.strictObject({ chanceOfLean: share, leanCount, lossPercent: z.number() }),
  words: z.string(),
});

const bySwapCountSchema = z.strictObject({
  swaps: z.int().check(z.minimum(0)),
  settings: z.array(setting),
  leanRunsOverRisk: z.int().check(z.minimum(0)),
  richRuns: z.int().check(z.minimum(0)),
  lossPercent: z.number(),
  secondsLost: z.nullable(z.number()),
});

const standingSchema = z
  .strictObject({
    inNow: z.strictObject({
      setting,
      known: z.enum(['told', 'baseline']).check(about('baseline: nobody said what is in.')),
    }),
    state: z
      .nullable(driftState)
      .check(about('Of what is in, in the air of now; null where no hour says so.')),
    driftPercent: z.nullable(z.number()),
    question: z
      .nullable(
        z.strictObject({ from: setting, to: setting, beforeRun: runIndex, since: moment, words: z.string() }),
      )
      .check(about('An accepted swap whose time is over and that nobody confirmed; from counts as in.')),
    job: z.strictObject({
      kind: z.enum(['swap', 'hold', 'do-not-race', 'no-hours', 'out', 'over']),
      swap: z.nullable(z.int().check(z.minimum(0))).check(about('Index into swaps.')),
    }),
    dangers: z.array(
      z.strictObject({
        grade: z.enum(['lean', 'drowned']),
        why: z.enum(['no-jet', 'no-time']),
        runs: z.array(runIndex),
        borrow: z.nullable(z.array(z.number())),
        words: z.string(),
      }),
    ),
    risk: z.string().check(about('The risk of what is to come, in counts.')),
    reading: z
      .nullable(
        z.strictObject({
          run: runIndex,
          at: moment.check(about('As late as leaves time to swap by it.')),
          temperatureSdBeforeC: z.number(),
          temperatureSdAfterC: z.number(),
          words: z.string(),
        }),
      )
      .check(
        about(
          'A reading at the track that pays now, and how well it would tell the temperature of a run: one standard deviation without it and with it.',
        ),
      ),
  })
  .check(about('What is true now and what to do next.'));

export const planAnswerSchema = z
  .strictObject({
    machine: z.string(),
    call: z.string().check(about('The plan in a few sentences; what must be heard first comes first.')),
    standing: standingSchema,
    now: moment.check(about('The moment the plan was made for.')),
    source: z
      .strictObject({
        name: z.string().check(about("The service's name, or 'typed' for hours that were sent.")),
        attribution: z
          .string()
          .check(about('The credit line the service asks for; to be shown with the plan.')),
        attributionUrl: z.nullable(z.string()),
        issuedAt: z.nullable(moment),
        fetchedAt: z.nullable(moment),
      })
      .check(about('Where the hours came from.')),
    hours: z.array(planHourSchema),
    crossings: z
      .array(crossingSchema)
      .check(about('When the baseline setting itself turns lean, right or rich.')),
    runs: z.array(planRunSchema),
    stints: z.array(z.strictObject({ setting, firstRun: runIndex, lastRun: runIndex })),
    swaps: z.array(swapSchema),
    bySwapCount: z.array(bySwapCountSchema).check(about('The best plan with each number of swaps.')),
    swapWorthPercent: z
      .number()
      .check(about('Power a swap had to save in this plan, added up over the runs it serves.')),
    runnerUp: z.nullable(z.strictObject({ settings: z.array(setting), marginPercent: z.number() })),
    kept: z
      .boolean()
      .check(about('True where the accepted plan was kept although a new one would differ a little.')),
    hoursEnd: moment,
    baseline: setting,
    warnings: z
      .array(z.strictObject({ code: z.string(), message: z.string() }))
      .check(
        about(
          'A code that ends in pressure-in-doubt asks whether a number is what it was sent as: send it under its own name, or stand by it with pressureConfirmed (a reading: confirmed).',
        ),
      ),
  })
  .register(z.globalRegistry, { id: 'Plan' });

export const plansAnswerSchema = z
  .strictObject({ plans: z.array(planAnswerSchema) })
  .register(z.globalRegistry, { id: 'Plans' });

export type PlanAnswer = z.output<typeof planAnswerSchema>;
export type CrossingAnswer = z.output<typeof crossingSchema>;
