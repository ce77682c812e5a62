import { z } from 'zod';
import { eventSchema, hourSchema, readingSchema, settingSchema } from './event';
import { machineSchema } from './machine';
import { nameText } from './name-text';
import { time } from './numbers';
import { placeOffsetSchema } from './place-offset';
import { LIMITS } from './plan-request';

/** What a machine is called on a board by programs: it stays while names change. */
const machineId = z
  .string()
  .regex(/^[\w-]{1,64}$/, 'expected 1 to 64 letters, digits, - or _')
  .describe('Names the machine for programs. Left out: its place in the list, from 1.');

const MOST_FITTINGS = 200;

const boardEntrySchema = z.strictObject({
  id: machineId.optional(),
  name: nameText.optional().describe("The racer's name; the machine's where left out."),
  machine: machineSchema,
  runs: eventSchema.shape.runs
    .optional()
    .describe('Runs of its own class; those of the event where left out.'),
  fittings: z
    .array(z.strictObject({ at: time, setting: settingSchema }))
    .max(MOST_FITTINGS)
    .default([])
    .describe('What was said to be in the engine, and since when.'),
  accepted: z.array(settingSchema).max(60).optional().describe('The plan already accepted, by run.'),
  made: z
    .array(z.strictObject({ run: z.int().min(0).max(59), setting: settingSchema }))
    .max(60)
    .default([]),
  outFrom: time.optional().describe('From then on the machine runs no more.'),
});

/** Hours are a forecast's copy where nobody typed them: the board asks for newer ones itself. */
const nightFields = {
  event: eventSchema,
  machines: z.array(boardEntrySchema).min(1).max(LIMITS.machines, 'at most 100 machines on a board'),
  hours: z
    .array(hourSchema)
    .max(LIMITS.hours, 'at most 400 hours')
    .default([])
    .describe('Left out: a forecast for event.place.'),
  hoursTyped: z
    .boolean()
    .default(true)
    .describe('False: hours are a copy of a forecast, used only while no newer one is to be had.'),
  readings: z.array(readingSchema).max(LIMITS.readings, 'at most 500 readings').default([]),
  placeOffset: placeOffsetSchema.optional(),
};

export const boardPostSchema = z
  .strictObject(nightFields)
  .superRefine(({ event, hours, machines }, context) => {
    if (hours.length === 0 && event.place === undefined)
      context.addIssue({
        code: 'custom',
        path: ['hours'],
        message: 'is missing: send hours, or event.place',
      });
    const ids = machines.map(({ id }, i) => id ?? String(i + 1));
    for (const [i, id] of ids.entries())
      if (ids.indexOf(id) < i)
        context.addIssue({ code: 'custom', path: ['machines', i, 'id'], message: 'stands here twice' });
  })
  .meta({ id: 'BoardPost' });

export type BoardNight = z.output<typeof boardPostSchema>;
export type BoardEntry = BoardNight['machines'][number];

/** What a machine's people have said themselves stays where the keeper says nothing of it. */
const boardEntryPatchSchema = boardEntrySchema.extend({
  fittings: boardEntrySchema.shape.fittings.unwrap().optional(),
  made: boardEntrySchema.shape.made.unwrap().optional(),
});

/** Whole fields that take the place of those posted; what is left out stays. */
export const boardPatchSchema = z
  .strictObject({
    event: nightFields.event.optional(),
    machines: z
      .array(boardEntryPatchSchema)
      .min(1)
      .max(LIMITS.machines, 'at most 100 machines on a board')
      .optional()
      .describe('fittings and made, left out, stay as they are for the machine of that id.'),
    hours: nightFields.hours.unwrap().optional(),
    hoursTyped: nightFields.hoursTyped.unwrap().optional(),
    readings: nightFields.readings.unwrap().optional(),
    placeOffset: nightFields.placeOffset,
  })
  .meta({ id: 'BoardPatch' });

export type BoardPatch = z.output<typeof boardPatchSchema>;

export const boardDoneSchema = z
  .strictObject({
    machine: machineId,
    setting: settingSchema.describe('What is in the engine now.'),
    at: time.optional().describe('Since when, not before it was posted; now where left out.'),
  })
  .meta({ id: 'BoardDone' });

export type BoardDone = z.output<typeof boardDoneSchema>;

const keyText = (characters: number) =>
  z.string().regex(new RegExp(`^[\\w-]{${characters}}={0,2}$`), 'expected base64url of the right length');

/** A PushSubscription's JSON (W3C Push API) and the machines it is for. */
export const boardSubscriptionSchema = z
  .strictObject({
    subscription: z.object({
      endpoint: z.url().max(1000, 'at most 1000 characters'),
      keys: z.object({
        p256dh: keyText(87).describe('65 bytes: a point of P-256, not packed.'),
        auth: keyText(22).describe('16 bytes.'),
      }),
    }),
    machines: z.array(machineId).min(1).max(LIMITS.machines),
  })
  .meta({ id: 'BoardSubscription' });

export type BoardSubscription = z.output<typeof boardSubscriptionSchema>;

export const boardUnsubscribeSchema = z
  .strictObject({ endpoint: z.url().max(1000, 'at most 1000 characters') })
  .meta({ id: 'BoardUnsubscribe' });

export const boardPostedSchema = z
  .strictObject({
    id: z.string(),
    keepSecret: z.string().describe('Changes the board and takes it down. Shown this once.'),
    followSecret: z.string().describe('Reads it, follows a machine, says what is in. Shown this once.'),
    expiresAt: z.string().describe('Everything about it is gone then.'),
    revision: z.int(),
  })
  .meta({ id: 'BoardPosted' });
