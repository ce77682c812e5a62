import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import { airStateSchema } from './air';
import { nameText } from './name-text';
import { jetSize } from './numbers';

const boxEntry = z.strictObject({
  size: jetSize.check(about('The number stamped on the jet.')),
  count: z
    .int()
    .check(
      z.minimum(0, 'a count is 0 or more'),
      z.maximum(99, 'at most 99 of a size'),
      about('How many of this size are owned.'),
    ),
});

const jetMarkingSchema = z.union([
  z.enum(['flow', 'bore']),
  z.strictObject({
    list: z
      .array(
        z.strictObject({
          size: jetSize,
          area: z.number().check(z.minimum(1e-4), z.maximum(1e6), about('Relative area; only ratios count.')),
        }),
      )
      .check(z.minLength(2, 'list at least two jets'), z.maxLength(200)),
  }),
]);

const responseSchema = z.strictObject({
  pressureExponent: z.number().check(z.minimum(-1), z.maximum(3)),
  temperatureExponent: z.number().check(z.minimum(-1), z.maximum(3)),
  pressureSd: z.number().check(z.minimum(0.001), z.maximum(2)),
  temperatureSd: z.number().check(z.minimum(0.001), z.maximum(2)),
  correlation: z.number().check(z.gt(-1), z.lt(1)),
  origin: z._default(z.enum(['prior', 'chart', 'log', 'chart-and-log', 'typed']), 'typed'),
});

const limitsSchema = z.strictObject({
  leanPercent: z
    .number()
    .check(
      z.minimum(0, 'expected 0 to 20'),
      z.maximum(20, 'expected 0 to 20'),
      about('Drift below minus this is lean.'),
    ),
  richPercent: z
    .number()
    .check(
      z.minimum(0.5, 'expected 0.5 to 30'),
      z.maximum(30, 'expected 0.5 to 30'),
      about('Drift above this is too rich.'),
    ),
  risk: z
    .number()
    .check(
      z.minimum(0.001, 'expected 0.001 to 0.5'),
      z.maximum(0.5, 'expected 0.001 to 0.5'),
      about('Highest accepted risk of a lean run.'),
    ),
});

const trimSchema = z
  .strictObject({
    lowest: z.int().check(z.minimum(-20), z.maximum(40)),
    highest: z.int().check(z.minimum(-20), z.maximum(40)),
    baseline: z.int().check(z.minimum(-20), z.maximum(40)),
    percentPerPosition: z.number().check(z.minimum(0.05), z.maximum(15)),
  })
  .check(
    z.refine((t) => t.lowest < t.highest && t.baseline >= t.lowest && t.baseline <= t.highest, {
      message: 'lowest must be below highest, and the baseline between them',
      path: ['baseline'],
    }),
  );

const pilotSchema = z
  .strictObject({
    jet: jetSize,
    jets: z._default(z.array(jetSize).check(z.maxLength(40)), []),
    screw: z
      .enum(['fuel', 'air'])
      .check(about('A fuel screw turned out is richer; an air screw turned out is leaner.')),
    turns: z.number().check(z.minimum(0), z.maximum(8)),
    leastTurns: z._default(z.number().check(z.minimum(0), z.maximum(8)), 0.5),
    mostTurns: z._default(z.number().check(z.minimum(0), z.maximum(8)), 2.25),
    turnsPerSize: z._default(z.number().check(z.minimum(0.05), z.maximum(5)), 1.25),
    percentPerSize: z._default(z.number().check(z.minimum(0.05), z.maximum(30)), 6),
  })
  .check(
    z.refine((p) => p.leastTurns < p.mostTurns && p.turns >= p.leastTurns && p.turns <= p.mostTurns, {
      message: 'the baseline turns must lie within the allowed range',
      path: ['turns'],
    }),
  );

const needleSchema = z
  .strictObject({
    groove: z.int().check(z.minimum(1), z.maximum(12), about('Clip groove from the top; 1 is leanest.')),
    grooves: z.int().check(z.minimum(1), z.maximum(12)),
    percentPerGroove: z._default(z.number().check(z.minimum(0.05), z.maximum(15)), 2.5),
  })
  .check(z.refine((n) => n.groove <= n.grooves, { message: 'the groove must exist', path: ['groove'] }));

export const baselineSchema = z.strictObject({
  air: airStateSchema.check(about('The air the jets were proven in.')),
  provenOn: z.optional(z.iso.date()),
  judged: z
    ._default(z.enum(['edge', 'right', 'size-rich']), 'right')
    .check(about('On the edge of lean, right, or a size rich.')),
  intakeOffsetC: z
    .optional(z.number().check(z.minimum(-20), z.maximum(60)))
    .check(about('Carburettor air minus ambient when proven; as now where not given.')),
  note: z.optional(z.string().check(z.maxLength(500))),
});

export const hardwareKindSchema = z.enum([
  'bored',
  'airbox-off',
  'airbox-on',
  'open-filters',
  'pipe',
  'big-bore',
  'compression',
  'fuel',
]);

export const hardwareSchema = z.strictObject({
  kind: hardwareKindSchema,
  amount: z
    .nullable(z.number())
    .check(
      about(
        'Millimetres for bored, percent of displacement for big-bore, share of ethanol (0 to 1) for fuel; else null.',
      ),
    ),
});

export const machineSchema = z
  .strictObject({
    name: nameText,
    carburettors: z
      .array(z.strictObject({ main: jetSize }))
      .check(z.minLength(1, 'at least one carburettor'), z.maxLength(6, 'at most six carburettors')),
    jetMarking: z._default(jetMarkingSchema, 'flow'),
    markingSure: z
      .optional(z.boolean())
      .check(about('True: the marking was questioned and is right, so it is not questioned again.')),
    box: z.array(boxEntry).check(z.maxLength(100, 'at most 100 sizes')),
    baseline: baselineSchema,
    trim: z.optional(trimSchema),
    pilot: z.optional(pilotSchema),
    needle: z.optional(needleSchema),
    limits: z._default(limitsSchema, { leanPercent: 2, richPercent: 5, risk: 0.05 }),
    intakeOffsetC: z
      ._default(z.number().check(z.minimum(-20), z.maximum(60)), 0)
      .check(about('Air at the carburettor minus ambient air.')),
    response: z
      .optional(responseSchema)
      .check(about('How far mains move with air; the default is a prior of 0.65 ± 0.12 on each exponent.')),
    fuelDensity: z.optional(
      z.strictObject({
        offsetC: z.number().check(z.minimum(-40), z.maximum(60)),
        baselineC: z.number().check(z.minimum(-50), z.maximum(60)),
      }),
    ),
    hardware: z
      .optional(z.array(hardwareSchema).check(z.maxLength(100)))
      .check(about('Parts changed since the baseline was proven, in the order they were changed.')),
    baselineShift: z
      .optional(
        z.strictObject({
          logArea: z.number().check(z.minimum(-1), z.maximum(1)),
          sd: z.number().check(z.minimum(0), z.maximum(1)),
        }),
      )
      .check(
        about(
          'Natural log of the right jet area over the baseline jets in its own air, learned from a log; stands for what judged and hardware would say.',
        ),
      ),
    tonight: z
      .optional(
        z.strictObject({
          logAreas: z
            .array(z.number().check(z.minimum(0), z.maximum(0.5)))
            .check(z.minLength(1), z.maxLength(6)),
          run: z.string().check(z.maxLength(80)),
        }),
      )
      .check(
        about(
          'What plugs or gauges of this night ask for beyond the baseline: natural log of area by carburettor, and the run that said so.',
        ),
      ),
    richPowerLoss: z._default(z.number().check(z.minimum(0), z.maximum(20)), 2),
    swapWorthPercent: z
      .optional(z.number().check(z.minimum(0, 'expected 0 to 20'), z.maximum(20, 'expected 0 to 20')))
      .check(
        about(
          'Power a swap must save, added up over the runs it serves; 0.5 for each carburettor where not given, and twice that where a temperature was read at the track. A swap for the lean limit is never weighed against it.',
        ),
      ),
    ratedPowerHp: z
      .optional(z.number().check(z.minimum(0.1), z.maximum(2000)))
      .check(about('Turns shares of power into horsepower in sentences; no plan depends on it.')),
  })
  .register(z.globalRegistry, { id: 'Machine' });

/** As written to a file or a database: defaults filled in. */
export type MachineJson = z.output<typeof machineSchema>;
/** As a caller may send it: defaults may be missing. */
export type MachineInput = z.input<typeof machineSchema>;
