import * as z from 'zod/mini';
import { eventSchema, hourSchema, placeSchema, readingSchema, settingSchema } from '@/lib/contract/event';
import { keptForecastSchema } from '@/lib/contract/forecast';
import { baselineSchema, hardwareKindSchema, machineSchema } from '@/lib/contract/machine';
import { bibText, nameOrNone, nameText } from '@/lib/contract/name-text';
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
  trim: z._default(z.nullable(z.int()), null),
  baseline: baselineSchema,
  /** Hardware changes that were in place when it was proven, by their ids; absent: none was known. */
  provenWith: z.optional(z.array(id).check(z.maxLength(100))),
});

/** What a person says of a baseline: all but its id and the parts that were in place. */
export const toldBaselineSchema = z.pick(datedBaselineSchema, { mains: true, trim: true, baseline: true });

const hardwareChangeSchema = z.strictObject({
  id,
  kind: hardwareKindSchema,
  /** Millimetres bored, percent of displacement, share of ethanol ...: meaning depends on kind; null where none is needed. */
  amount: z.nullable(z.number()),
  on: z.iso.date(),
  note: z._default(z.string().check(z.maxLength(500)), ''),
});

/** One cell of a maker's or tuner's own chart. */
const chartCellSchema = z.strictObject({
  temperatureC: z.number(),
  elevationM,
  main: z.number().check(z.gt(0)),
});

export const machineRecordSchema = z.strictObject({
  machine: machineSchema,
  baselines: z._default(z.array(datedBaselineSchema).check(z.maxLength(200)), []),
  activeBaselineId: z._default(z.nullable(id), null),
  /** A box shared by several machines; null where the machine's own box counts. */
  boxId: z._default(z.nullable(id), null),
  hardware: z._default(z.array(hardwareChangeSchema).check(z.maxLength(100)), []),
  chart: z._default(z.array(chartCellSchema).check(z.maxLength(400)), []),
  /** Set when hardware changed since the baseline was proven. */
  toBeReproven: z._default(z.boolean(), false),
  /**
   * What the log taught about the baseline itself, with the baseline it holds for: it says nothing once other jets,
   * another air or other hardware are in force. Absent: nothing was learned.
   */
  learnedLevel: z.optional(
    z.strictObject({
      logArea: z.number().check(z.minimum(-1), z.maximum(1)),
      sd: z.number().check(z.minimum(0), z.maximum(1)),
      mains: settingSchema.shape.mains,
      air: baselineSchema.shape.air,
      hardware: z.array(id).check(z.maxLength(100)),
    }),
  ),
});

export const boxRecordSchema = z.strictObject({ name: nameOrNone, entries: machineSchema.shape.box });

/** How the typed hours of an event were entered, so that they can be edited again. */
export const typedHoursSchema = z.strictObject({
  hours: z.array(hourSchema).check(z.maxLength(400)),
  /** Asked once for all hours that carry no pressure of their own. */
  pressure: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('standard') }),
    z.strictObject({ kind: z.enum(['station', 'altimeter', 'sea-level']), hpa: pressureHpa }),
  ]),
  relativeHumidity: z._default(relativeHumidity, 0.8),
  /** The person has stood by these pressures and their kind. Absent: not asked, or not answered. */
  pressureConfirmed: z.optional(z.boolean()),
});

/** What sets the racers of an event apart from each other beyond their machines. */
export const clubSchema = z.strictObject({
  /** Classes with runs of their own; who is in none runs when everybody does. */
  classes: z._default(
    z.array(z.strictObject({ id, name: nameText, runs: eventSchema.shape.runs })).check(z.maxLength(100)),
    [],
  ),
  /** By machine id. */
  racers: z._default(
    z.record(
      id,
      z.strictObject({
        name: z._default(nameOrNone, ''),
        /** The number on the machine or the vest, as it is written there. Absent: none. */
        bib: z.optional(bibText),
        classId: z._default(z.nullable(id), null),
      }),
    ),
    {},
  ),
});

export const eventRecordSchema = z.strictObject({
  event: eventSchema,
  machineIds: z.array(id).check(z.maxLength(100)),
  typed: z.nullable(typedHoursSchema),
  /** Key of the forecast in its table; null while there is none. */
  forecastId: z._default(z.nullable(id), null),
  readings: z._default(z.array(readingSchema).check(z.maxLength(500)), []),
  /** By machine id. */
  accepted: z._default(z.record(id, z.array(settingSchema).check(z.maxLength(60))), {}),
  fitted: z._default(z.record(id, settingSchema), {}),
  made: z._default(
    z.record(
      id,
      z
        .array(z.strictObject({ run: z.int().check(z.minimum(0)), setting: settingSchema }))
        .check(z.maxLength(60)),
    ),
    {},
  ),
  /** When what was said to be in, by machine id, oldest first; `fitted` is the last. Absent: nobody kept the times. */
  fittings: z.optional(
    z.record(id, z.array(z.strictObject({ at: time, setting: settingSchema })).check(z.maxLength(60))),
  ),
  /** From when on a machine is out, by machine id. Absent: nobody is. */
  outFrom: z.optional(z.record(id, time)),
  demo: z._default(z.boolean(), false),
  /**
   * The temperature each run was accepted with, by machine id, so that a change can be told with its reason. Absent:
   * not known.
   */
  acceptedAir: z.optional(
    z.record(id, z.array(z.strictObject({ start: time, temperatureC })).check(z.maxLength(60))),
  ),
  /**
   * What each run was last planned on before it began, by machine id; `run` counts the event's runs as they stand.
   * `accepted` follows what was told, this does not. Absent: not kept.
   */
  planned: z.optional(
    z.record(
      id,
      z
        .array(
          z.strictObject({
            run: z.int().check(z.minimum(0), z.maximum(59)),
            setting: settingSchema,
            temperatureC,
          }),
        )
        .check(z.maxLength(60)),
    ),
  ),
  /** Absent: nobody is set apart. */
  club: z.optional(clubSchema),
  /** What past nights taught about the place, where the night came with it. Absent: one's own nights teach it. */
  placeOffset: z.optional(placeOffsetSchema),
  /** True where the plan is to count on nothing of the kind. */
  withoutPlaceOffset: z.optional(z.boolean()),
  /** The board it is posted to, by this browser: its secrets, and a mark of what was sent last. Absent: to none. */
  board: z.optional(
    z.strictObject({
      id: z.string().check(z.maxLength(64)),
      keepSecret: z.string().check(z.maxLength(64)),
      followSecret: z.string().check(z.maxLength(64)),
      sent: z.string().check(z.maxLength(64)),
      /** What was said at each machine that this record and the board have both heard, by its times. */
      heard: z.optional(z.record(id, z.array(time).check(z.maxLength(200)))),
    }),
  ),
});

const verdictSchema = z.enum(['lean', 'right', 'rich']);

export const logRecordSchema = z.strictObject({
  machineId: id,
  eventId: z._default(z.nullable(id), null),
  run: z._default(z.string().check(z.maxLength(80)), ''),
  at: time,
  air: baselineSchema.shape.air,
  setting: settingSchema,
  verdict: z._default(z.nullable(verdictSchema), null),
  /** By carburettor, where they were looked at one by one; `verdict` is then the leanest of them. Absent: all alike. */
  verdicts: z.optional(z.array(z.nullable(verdictSchema)).check(z.minLength(1), z.maxLength(6))),
  /** How many sizes lean or rich, of the leanest where they differ; 0 when right. */
  sizes: z._default(z.nullable(z.number().check(z.minimum(0), z.maximum(10))), null),
  judgedBy: z._default(
    z.nullable(z.enum(['plugs', 'exhaust-temperature', 'wideband', 'piston-wash', 'clock', 'feel'])),
    null,
  ),
  seconds: z._default(z.nullable(z.number().check(z.gt(0), z.maximum(86_400))), null),
  speedKmh: z._default(z.nullable(z.number().check(z.gt(0), z.maximum(600))), null),
  note: z._default(z.string().check(z.maxLength(1000)), ''),
});

/** The last forecast of a place, kept for when there is no signal, as our own API answered it. */
export const forecastRecordSchema = z.strictObject({ place: placeSchema, forecast: keptForecastSchema });

export const preferencesSchema = z.strictObject({
  temperature: z._default(z.enum(TEMPERATURE_UNITS), 'F'),
  pressure: z._default(z.enum(PRESSURE_UNITS), 'inHg'),
  elevation: z._default(z.enum(ELEVATION_UNITS), 'ft'),
  theme: z._default(z.enum(['auto', 'day', 'night']), 'auto'),
  brightness: z._default(z.number().check(z.minimum(0.3), z.maximum(1)), 1),
  eventId: z._default(z.nullable(id), null),
  machineId: z._default(z.nullable(id), null),
  /** How clock times are written. Absent: as the device's language writes them. */
  clock: z.optional(z.enum(['auto', '12', '24'])),
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
} as const satisfies Record<TableName, z.ZodMiniType>;

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
