import * as z from 'zod/mini';
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
    powerHp: z._default(z.nullable(z.number().check(z.gt(0), z.maximum(5000))), null),
    seconds: z._default(z.nullable(z.number().check(z.gt(0), z.maximum(86_400))), null),
    speedKmh: z._default(z.nullable(z.number().check(z.gt(0), z.maximum(600))), null),
    at: z._default(z.nullable(time), null),
    note: z._default(z.string().check(z.maxLength(500)), ''),
  })
  .check(
    z.refine(
      (pull) =>
        [pull.powerHp, pull.seconds, pull.speedKmh].filter((measure) => measure !== null).length === 1,
      {
        message: 'give one of powerHp, seconds, speedKmh',
        path: ['powerHp'],
      },
    ),
  );

export const comparisonRecordSchema = z.strictObject({
  name: nameText,
  /** What was changed between before and after. */
  part: z._default(z.string().check(z.maxLength(200)), ''),
  machineId: z._default(z.nullable(recordId), null),
  /** Where the part is one that moves the mixture by itself; absent where it is not, or nobody knows. */
  hardware: z.optional(hardwareSchema),
  /** Name of the correction standard; the names are those of lib/power. */
  standard: z.string().check(z.maxLength(40)),
  /** Distance of timed runs; null where power or speed was measured. */
  distanceM: z._default(z.nullable(z.number().check(z.gt(0), z.maximum(1_000_000))), null),
  pulls: z.array(pullSchema).check(z.maxLength(200)),
});
