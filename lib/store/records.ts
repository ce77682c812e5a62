import * as z from 'zod';
import { eventSchema, hourSchema, placeSchema, readingSchema, settingSchema } from '@/lib/contract/event';
import { keptForecastSchema } from '@/lib/contract/forecast';
import { baselineSchema, hardwareKindSchema, machineSchema } from '@/lib/contract/machine';
import { elevationM, pressureHpa, relativeHumidity, temperatureC, time } from '@/lib/contract/numbers';
import { placeOffsetSchema } from '@/lib/contract/place-offset';
import { ELEVATION_UNITS, PRESSURE_UNITS, TEMPERATURE_UNITS } from '@/lib/units/choice';
import { comparisonRecordSchema } from './comparison-record';
import { recordId as id } from './record-id';
import type { Trace } from './trace-schema';

/** Tables of the browser database. All keys in one place. */
export const TABLES = [
  'machines',
  'boxes',
  'events',
  'log',
  'forecasts',
  'comparisons',
  'preferences',
] as const;
export type TableName = (typeof TABLES)[number];

/** A baseline of the past or present: jets proven right in given air. */
const datedBaselineSchema = z.strictObject({
  id,
  mains: settingSchema.shape.mains,
  trim: z.int().nullable().default(null),
  baseline: baselineSchema,
  /** Hardware changes that were in place when it was proven, by their ids; absent: none was known. */
  provenWith: z.array(id).max(100).optional(),
});

/** What a person says of a baseline: all but its id and the parts that were in place. */
export const toldBaselineSchema = datedBaselineSchema.pick({ mains: true, trim: true, baseline: true });

const hardwareChangeSchema = z.strictObject({
  id,
  kind: hardwareKindSchema,
  /** Millimetres bored, percent of displacement, share of ethanol ...: meaning depends on kind; null where none is needed. */
  amount: z.number().nullable(),
  on: z.iso.date(),
  note: z.string().max(500).default(''),
});

/** One cell of a maker's or tuner's own chart. */
const chartCellSchema = z.strictObject({
  temperatureC: z.number(),
  elevationM,
  main: z.number().gt(0),
});

export const machineRecordSchema = z.strictObject({
  machine: machineSchema,
  baselines: z.array(datedBaselineSchema).max(200).default([]),
  activeBaselineId: id.nullable().default(null),
  /** A box shared by several machines; null where the machine's own box counts. */
  boxId: id.nullable().default(null),
  hardware: z.array(hardwareChangeSchema).max(100).default([]),
  chart: z.array(chartCellSchema).max(400).default([]),
  /** Set when hardware changed since the baseline was proven. */
  toBeReproven: z.boolean().default(false),
  /**
   * What the log taught about the baseline itself, with the baseline it holds for: it says nothing once other jets,
   * another air or other hardware are in force. Absent: nothing was learned.
   */
  learnedLevel: z
    .strictObject({
      logArea: z.number().min(-1).max(1),
      sd: z.number().min(0).max(1),
      mains: settingSchema.shape.mains,
      air: baselineSchema.shape.air,
      hardware: z.array(id).max(100),
    })
    .optional(),
});

export const boxRecordSchema = z.strictObject({ name: z.string().max(80), entries: machineSchema.shape.box });

/** How the typed hours of an event were entered, so that they can be edited again. */
export const typedHoursSchema = z.strictObject({
  hours: z.array(hourSchema).max(400),
  /** Asked once for all hours that carry no pressure of their own. */
  pressure: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('standard') }),
    z.strictObject({ kind: z.enum(['station', 'altimeter', 'sea-level']), hpa: pressureHpa }),
  ]),
  relativeHumidity: relativeHumidity.default(0.8),
  /** The person has stood by these pressures and their kind. Absent: not asked, or not answered. */
  pressureConfirmed: z.boolean().optional(),
});

/** What sets the racers of an event apart from each other beyond their machines. */
export const clubSchema = z.strictObject({
  /** Classes with runs of their own; who is in none runs when everybody does. */
  classes: z
    .array(z.strictObject({ id, name: z.string().trim().min(1).max(80), runs: eventSchema.shape.runs }))
    .max(100)
    .default([]),
  /** By machine id. */
  racers: z
    .record(
      id,
      z.strictObject({ name: z.string().max(80).default(''), classId: id.nullable().default(null) }),
    )
    .default({}),
});

export const eventRecordSchema = z.strictObject({
  event: eventSchema,
  machineIds: z.array(id).max(100),
  typed: typedHoursSchema.nullable(),
  /** Key of the forecast in its table; null while there is none. */
  forecastId: id.nullable().default(null),
  readings: z.array(readingSchema).max(500).default([]),
  /** By machine id. */
  accepted: z.record(id, z.array(settingSchema).max(60)).default({}),
  fitted: z.record(id, settingSchema).default({}),
  made: z
    .record(id, z.array(z.strictObject({ run: z.int().min(0), setting: settingSchema })).max(60))
    .default({}),
  /** When what was said to be in, by machine id, oldest first; `fitted` is the last. Absent: nobody kept the times. */
  fittings: z.record(id, z.array(z.strictObject({ at: time, setting: settingSchema })).max(60)).optional(),
  /** From when on a machine is out, by machine id. Absent: nobody is. */
  outFrom: z.record(id, time).optional(),
  demo: z.boolean().default(false),
  /**
   * The temperature each run was accepted with, by machine id, so that a change can be told with its reason. Absent:
   * not known.
   */
  acceptedAir: z.record(id, z.array(z.strictObject({ start: time, temperatureC })).max(60)).optional(),
  /**
   * What each run was last planned on before it began, by machine id; `run` counts the event's runs as they stand.
   * `accepted` follows what was told, this does not. Absent: not kept.
   */
  planned: z
    .record(
      id,
      z.array(z.strictObject({ run: z.int().min(0).max(59), setting: settingSchema, temperatureC })).max(60),
    )
    .optional(),
  /** Absent: nobody is set apart. */
  club: clubSchema.optional(),
  /** What past nights taught about the place, where the night came with it. Absent: one's own nights teach it. */
  placeOffset: placeOffsetSchema.optional(),
  /** True where the plan is to count on nothing of the kind. */
  withoutPlaceOffset: z.boolean().optional(),
  /** The board it is posted to, by this browser: its secrets, and a mark of what was sent last. Absent: to none. */
  board: z
    .strictObject({
      id: z.string().max(64),
      keepSecret: z.string().max(64),
      followSecret: z.string().max(64),
      sent: z.string().max(64),
      /** What was said at each machine that this record and the board have both heard, by its times. */
      heard: z.record(id, z.array(time).max(200)).optional(),
    })
    .optional(),
});

const verdictSchema = z.enum(['lean', 'right', 'rich']);

export const logRecordSchema = z.strictObject({
  machineId: id,
  eventId: id.nullable().default(null),
  run: z.string().max(80).default(''),
  at: time,
  air: baselineSchema.shape.air,
  setting: settingSchema,
  verdict: verdictSchema.nullable().default(null),
  /** By carburettor, where they were looked at one by one; `verdict` is then the leanest of them. Absent: all alike. */
  verdicts: z.array(verdictSchema.nullable()).min(1).max(6).optional(),
  /** How many sizes lean or rich, of the leanest where they differ; 0 when right. */
  sizes: z.number().min(0).max(10).nullable().default(null),
  judgedBy: z
    .enum(['plugs', 'exhaust-temperature', 'wideband', 'piston-wash', 'clock', 'feel'])
    .nullable()
    .default(null),
  seconds: z.number().gt(0).max(86_400).nullable().default(null),
  speedKmh: z.number().gt(0).max(600).nullable().default(null),
  note: z.string().max(1000).default(''),
});

/** The last forecast of a place, kept for when there is no signal, as our own API answered it. */
export const forecastRecordSchema = z.strictObject({ place: placeSchema, forecast: keptForecastSchema });

export const preferencesSchema = z.strictObject({
  temperature: z.enum(TEMPERATURE_UNITS).default('F'),
  pressure: z.enum(PRESSURE_UNITS).default('inHg'),
  elevation: z.enum(ELEVATION_UNITS).default('ft'),
  theme: z.enum(['auto', 'day', 'night']).default('auto'),
  brightness: z.number().min(0.3).max(1).default(1),
  eventId: id.nullable().default(null),
  machineId: id.nullable().default(null),
  /** How clock times are written. Absent: as the device's language writes them. */
  clock: z.enum(['auto', '12', '24']).optional(),
});

export type MachineRecord = z.output<typeof machineRecordSchema>;
export type BoxRecord = z.output<typeof boxRecordSchema>;
export type EventRecord = z.output<typeof eventRecordSchema>;
export type ClubRecord = z.output<typeof clubSchema>;
export type ClubClass = ClubRecord['classes'][number];
export type TypedHours = z.output<typeof typedHoursSchema>;
export type LogRecord = z.output<typeof logRecordSchema>;
export type ForecastRecord = z.output<typeof forecastRecordSchema>;
export type ComparisonRecord = z.output<typeof comparisonRecordSchema>;
export type Preferences = z.output<typeof preferencesSchema>;

/** The schema of each table's values. */
export const TABLE_SCHEMA = {
  machines: machineRecordSchema,
  boxes: boxRecordSchema,
  events: eventRecordSchema,
  log: logRecordSchema,
  forecasts: forecastRecordSchema,
  comparisons: comparisonRecordSchema,
  preferences: preferencesSchema,
} as const satisfies Record<TableName, z.ZodType>;

export type TableValue = { [T in TableName]: z.output<(typeof TABLE_SCHEMA)[T]> };

/** A stored value with what keeps two tabs from overwriting each other. */
export type Stored<T> = {
  readonly id: string;
  /** Grows by one with every write. */
  readonly revision: number;
  /** ISO 8601, UTC. */
  readonly updatedAt: string;
  readonly value: T;
  /** Where its fields come from. Absent: not written to since traces are kept. */
  readonly trace?: Trace;
};
