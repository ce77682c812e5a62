import * as z from 'zod';
import { airStateSchema } from './air';
import { jetSize, shortText } from './numbers';

const boxEntry = z.strictObject({
  size: jetSize.describe('The number stamped on the jet.'),
  count: z
    .int()
    .min(0, 'a count is 0 or more')
    .max(99, 'at most 99 of a size')
    .describe('How many of this size are owned.'),
});

const jetMarkingSchema = z.union([
  z.enum(['flow', 'bore']),
  z.strictObject({
    list: z
      .array(
        z.strictObject({
          size: jetSize,
          area: z.number().min(1e-4).max(1e6).describe('Relative area; only ratios count.'),
        }),
      )
      .min(2, 'list at least two jets')
      .max(200),
  }),
]);

const responseSchema = z.strictObject({
  pressureExponent: z.number().min(-1).max(3),
  temperatureExponent: z.number().min(-1).max(3),
  pressureSd: z.number().min(0.001).max(2),
  temperatureSd: z.number().min(0.001).max(2),
  correlation: z.number().gt(-1).lt(1),
  origin: z.enum(['prior', 'chart', 'log', 'chart-and-log', 'typed']).default('typed'),
});

const limitsSchema = z.strictObject({
  leanPercent: z
    .number()
    .min(0, 'expected 0 to 20')
    .max(20, 'expected 0 to 20')
    .describe('Drift below minus this is lean.'),
  richPercent: z
    .number()
    .min(0.5, 'expected 0.5 to 30')
    .max(30, 'expected 0.5 to 30')
    .describe('Drift above this is too rich.'),
  risk: z
    .number()
    .min(0.001, 'expected 0.001 to 0.5')
    .max(0.5, 'expected 0.001 to 0.5')
    .describe('Highest accepted chance of a lean run.'),
});

const trimSchema = z
  .strictObject({
    lowest: z.int().min(-20).max(40),
    highest: z.int().min(-20).max(40),
    baseline: z.int().min(-20).max(40),
    percentPerPosition: z.number().min(0.05).max(15),
  })
  .refine((t) => t.lowest < t.highest && t.baseline >= t.lowest && t.baseline <= t.highest, {
    message: 'lowest must be below highest, and the baseline between them',
    path: ['baseline'],
  });

const pilotSchema = z
  .strictObject({
    jet: jetSize,
    jets: z.array(jetSize).max(40).default([]),
    screw: z
      .enum(['fuel', 'air'])
      .describe('A fuel screw turned out is richer; an air screw turned out is leaner.'),
    turns: z.number().min(0).max(8),
    leastTurns: z.number().min(0).max(8).default(0.5),
    mostTurns: z.number().min(0).max(8).default(2.25),
    turnsPerSize: z.number().min(0.05).max(5).default(1.25),
    percentPerSize: z.number().min(0.05).max(30).default(6),
  })
  .refine((p) => p.leastTurns < p.mostTurns && p.turns >= p.leastTurns && p.turns <= p.mostTurns, {
    message: 'the baseline turns must lie within the allowed range',
    path: ['turns'],
  });

const needleSchema = z
  .strictObject({
    groove: z.int().min(1).max(12).describe('Clip groove from the top; 1 is leanest.'),
    grooves: z.int().min(1).max(12),
    percentPerGroove: z.number().min(0.05).max(15).default(2.5),
  })
  .refine((n) => n.groove <= n.grooves, { message: 'the groove must exist', path: ['groove'] });

export const baselineSchema = z.strictObject({
  air: airStateSchema.describe('The air the jets were proven in.'),
  provenOn: z.iso.date().optional(),
  judged: z
    .enum(['edge', 'right', 'size-rich'])
    .default('right')
    .describe('On the edge of lean, right, or a size rich.'),
  intakeOffsetC: z
    .number()
    .min(-20)
    .max(60)
    .optional()
    .describe('Carburettor air minus ambient when proven; as now where not given.'),
  note: z.string().max(500).optional(),
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
    .number()
    .nullable()
    .describe(
      'Millimetres for bored, percent of displacement for big-bore, share of ethanol (0 to 1) for fuel; else null.',
    ),
});

export const machineSchema = z
  .strictObject({
    name: shortText,
    carburettors: z
      .array(z.strictObject({ main: jetSize }))
      .min(1, 'at least one carburettor')
      .max(6, 'at most six carburettors'),
    jetMarking: jetMarkingSchema.default('flow'),
    markingSure: z
      .boolean()
      .optional()
      .describe('True: the marking was questioned and is right, so it is not questioned again.'),
    box: z.array(boxEntry).max(100, 'at most 100 sizes'),
    baseline: baselineSchema,
    trim: trimSchema.optional(),
    pilot: pilotSchema.optional(),
    needle: needleSchema.optional(),
    limits: limitsSchema.default({ leanPercent: 2, richPercent: 5, risk: 0.05 }),
    intakeOffsetC: z
      .number()
      .min(-20)
      .max(60)
      .default(0)
      .describe('Air at the carburettor minus ambient air.'),
    response: responseSchema
      .optional()
      .describe('How far mains move with air; the default is a prior of 0.65 ± 0.12 on each exponent.'),
    fuelDensity: z
      .strictObject({ offsetC: z.number().min(-40).max(60), baselineC: z.number().min(-50).max(60) })
      .optional(),
    hardware: z
      .array(hardwareSchema)
      .max(100)
      .optional()
      .describe('Parts changed since the baseline was proven, in the order they were changed.'),
    baselineShift: z
      .strictObject({ logArea: z.number().min(-1).max(1), sd: z.number().min(0).max(1) })
      .optional()
      .describe(
        'Natural log of the right jet area over the baseline jets in its own air, learned from a log; stands for what judged and hardware would say.',
      ),
    tonight: z
      .strictObject({ logAreas: z.array(z.number().min(0).max(0.5)).min(1).max(6), run: z.string().max(80) })
      .optional()
      .describe(
        'What plugs or gauges of this night ask for beyond the baseline: natural log of area by carburettor, and the run that said so.',
      ),
    richPowerLoss: z.number().min(0).max(20).default(2),
    swapWorthPercent: z
      .number()
      .min(0, 'expected 0 to 20')
      .max(20, 'expected 0 to 20')
      .optional()
      .describe(
        'Power a swap must save, added up over the runs it serves; 0.5 for each carburettor where not given, and twice that where a temperature was read at the track. A swap for the lean limit is never weighed against it.',
      ),
    ratedPowerHp: z
      .number()
      .min(0.1)
      .max(2000)
      .optional()
      .describe('Turns shares of power into horsepower in sentences; no plan depends on it.'),
  })
  .meta({ id: 'Machine' });

/** As written to a file or a database: defaults filled in. */
export type MachineJson = z.output<typeof machineSchema>;
/** As a caller may send it: defaults may be missing. */
export type MachineInput = z.input<typeof machineSchema>;
