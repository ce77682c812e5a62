import * as z from 'zod';
import { eventSchema, hourSchema, readingSchema, settingSchema } from '@/lib/contract/event';
import { machineSchema } from '@/lib/contract/machine';
import { time } from '@/lib/contract/numbers';
import { placeOffsetSchema } from '@/lib/contract/place-offset';
import { recordId } from '@/lib/store/record-id';
import { traceSchema } from '@/lib/store/trace-schema';

/** One engine of a shared night, with what its owner accepted and has done. */
export const sharedMachineSchema = z.strictObject({
  /** Whose it is, wherever it is kept, and where its fields come from. Absent: not told. */
  id: recordId.optional(),
  trace: traceSchema.optional(),
  machine: machineSchema,
  fitted: settingSchema.optional(),
  outFrom: time.optional(),
  accepted: z.array(settingSchema).max(60).optional(),
  made: z
    .array(z.strictObject({ run: z.int().min(0).max(59), setting: settingSchema }))
    .max(60)
    .optional(),
});

/** Eight days of hours: more than any forecast that is worth sending. */
export const MOST_HOURS = 200;

/** A whole night as it travels in a link or a file: nothing in it is needed from anywhere else. */
export const sharedNightSchema = z.strictObject({
  /** The same of the event; the paths of its trace name machines by their place here. */
  id: recordId.optional(),
  trace: traceSchema.optional(),
  event: eventSchema,
  machines: z.array(sharedMachineSchema).min(1).max(40),
  /** Hours known when it was shared, typed or forecast; the fallback when no newer forecast can be had. */
  hours: z.array(hourSchema).max(MOST_HOURS),
  /** True where a person typed the hours: no forecast is put in their place. */
  hoursTyped: z.boolean().optional(),
  readings: z.array(readingSchema).max(100).default([]),
  /** What past nights taught about the place. Absent: nothing, or it is not to be used. */
  placeOffset: placeOffsetSchema.optional(),
  sharedAt: time,
});

export type SharedNight = z.output<typeof sharedNightSchema>;
export type SharedMachine = z.output<typeof sharedMachineSchema>;
