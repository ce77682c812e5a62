import * as z from 'zod/mini';
import { eventSchema, hourSchema, readingSchema, settingSchema } from '@/lib/contract/event';
import { machineSchema } from '@/lib/contract/machine';
import { bibText, nameText } from '@/lib/contract/name-text';
import { time } from '@/lib/contract/numbers';
import { placeOffsetSchema } from '@/lib/contract/place-offset';
import { recordId } from '@/lib/store/record-id';
import { traceSchema } from '@/lib/store/trace-schema';

/** One engine of a shared night, with what its owner accepted and has done. */
export const sharedMachineSchema = z.strictObject({
  /** Whose it is, wherever it is kept, and where its fields come from. Absent: not told. */
  id: z.optional(recordId),
  trace: z.optional(traceSchema),
  machine: machineSchema,
  /** What its racer is called at the event; absent where the machine's name says it. */
  racer: z.optional(nameText),
  bib: z.optional(bibText),
  fitted: z.optional(settingSchema),
  outFrom: z.optional(time),
  accepted: z.optional(z.array(settingSchema).check(z.maxLength(60))),
  made: z.optional(
    z
      .array(z.strictObject({ run: z.int().check(z.minimum(0), z.maximum(59)), setting: settingSchema }))
      .check(z.maxLength(60)),
  ),
});

/** Eight days of hours: more than any forecast that is worth sending. */
export const MOST_HOURS = 200;

/** A whole night as it travels in a link or a file: nothing in it is needed from anywhere else. */
export const sharedNightSchema = z.strictObject({
  /** The same of the event; the paths of its trace name machines by their place here. */
  id: z.optional(recordId),
  trace: z.optional(traceSchema),
  event: eventSchema,
  machines: z.array(sharedMachineSchema).check(z.minLength(1), z.maxLength(40)),
  /** Hours known when it was shared, typed or forecast; the fallback when no newer forecast can be had. */
  hours: z.array(hourSchema).check(z.maxLength(MOST_HOURS)),
  /** True where a person typed the hours: no forecast is put in their place. */
  hoursTyped: z.optional(z.boolean()),
  readings: z._default(z.array(readingSchema).check(z.maxLength(100)), []),
  /** What past nights taught about the place. Absent: nothing, or it is not to be used. */
  placeOffset: z.optional(placeOffsetSchema),
  sharedAt: time,
});

export type SharedNight = z.output<typeof sharedNightSchema>;
export type SharedMachine = z.output<typeof sharedMachineSchema>;
