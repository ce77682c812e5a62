import * as z from 'zod';
import { settingSchema } from '@/lib/contract/event';
import { baselineSchema, hardwareSchema } from '@/lib/contract/machine';
import { nameText } from '@/lib/contract/name-text';
import { time } from '@/lib/contract/numbers';
import { recordId } from './record-id';

/** One run or dyno pull of a fair comparison. One of the three measures is given, the same for all pulls. */
export const pullSchema = z
  .strictObject({
    id: recordId,
    side: z.enum(['before', 'after']),
    air: baselineSchema.shape.air,
    setting: settingSchema,
    powerHp: z.number().gt(0).max(5000).nullable().default(null),
    seconds: z.number().gt(0).max(86_400).nullable().default(null),
    speedKmh: z.number().gt(0).max(600).nullable().default(null),
    at: time.nullable().default(null),
    note: z.string().max(500).default(''),
  })
  .refine(
    (pull) => [pull.powerHp, pull.seconds, pull.speedKmh].filter((measure) => measure !== null).length === 1,
    {
      message: 'give one of powerHp, seconds, speedKmh',
      path: ['powerHp'],
    },
  );

export const comparisonRecordSchema = z.strictObject({
  name: nameText,
  /** What was changed between before and after. */
  part: z.string().max(200).default(''),
  machineId: recordId.nullable().default(null),
  /** Where the part is one that moves the mixture by itself; absent where it is not, or nobody knows. */
  hardware: hardwareSchema.optional(),
  /** Name of the correction standard; the names are those of lib/power. */
  standard: z.string().max(40),
  /** Distance of timed runs; null where power or speed was measured. */
  distanceM: z.number().gt(0).max(1_000_000).nullable().default(null),
  pulls: z.array(pullSchema).max(200),
});
