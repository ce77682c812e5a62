import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';
import { eventSchema, hourSchema, readingSchema, settingSchema } from './event';
import { machineSchema } from './machine';
import { nameText } from './name-text';
import { time } from './numbers';
import { placeOffsetSchema } from './place-offset';
import { LIMITS } from './plan-request';

/** What a machine is called on a board by programs: it stays while names change. */
const machineId = z
  .string()
  .check(
    z.regex(/^[\w-]{1,64}$/, 'expected 1 to 64 letters, digits, - or _'),
    about('Names the machine for programs. Left out: its place in the list, from 1.'),
  );

const MOST_FITTINGS = 200;

const boardEntrySchema = z.strictObject({
  id: z.optional(machineId),
  name: z.optional(nameText).check(about("The racer's name; the machine's where left out.")),
  machine: machineSchema,
  runs: z
    .optional(eventSchema.shape.runs)
    .check(about('Runs of its own class; those of the event where left out.')),
  fittings: z
    ._default(
      z.array(z.strictObject({ at: time, setting: settingSchema })).check(z.maxLength(MOST_FITTINGS)),
      [],
    )
    .check(about('What was said to be in the engine, and since when.')),
  accepted: z
    .optional(z.array(settingSchema).check(z.maxLength(60)))
    .check(about('The plan already accepted, by run.')),
  made: z._default(
    z
      .array(z.strictObject({ run: z.int().check(z.minimum(0), z.maximum(59)), setting: settingSchema }))
      .check(z.maxLength(60)),
    [],
  ),
  outFrom: z.optional(time).check(about('From then on the machine runs no more.')),
});

/** Hours are a forecast's copy where nobody typed them: the board asks for newer ones itself. */
const nightFields = {
  event: eventSchema,
  machines: z
    .array(boardEntrySchema)
    .check(z.minLength(1), z.maxLength(LIMITS.machines, 'at most 100 machines on a board')),
  hours: z
    ._default(z.array(hourSchema).check(z.maxLength(LIMITS.hours, 'at most 400 hours')), [])
    .check(about('Left out: a forecast for event.place.')),
  hoursTyped: z
    ._default(z.boolean(), true)
    .check(about('False: hours are a copy of a forecast, used only while no newer one is to be had.')),
  readings: z._default(
    z.array(readingSchema).check(z.maxLength(LIMITS.readings, 'at most 500 readings')),
    [],
  ),
  placeOffset: z.optional(placeOffsetSchema),
};

export const boardPostSchema = z
  .strictObject(nightFields)
  .check(
    z.superRefine(({ event, hours, machines }, context) => {
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
    }),
  )
  .register(z.globalRegistry, { id: 'BoardPost' });

export type BoardNight = z.output<typeof boardPostSchema>;
export type BoardEntry = BoardNight['machines'][number];

/** What a machine's people have said themselves stays where the keeper says nothing of it. */
const boardEntryPatchSchema = z.extend(boardEntrySchema, {
  fittings: z.optional(boardEntrySchema.shape.fittings.def.innerType),
  made: z.optional(boardEntrySchema.shape.made.def.innerType),
});

/** Whole fields that take the place of those posted; what is left out stays. */
export const boardPatchSchema = z
  .strictObject({
    event: z.optional(nightFields.event),
    machines: z
      .optional(
        z
          .array(boardEntryPatchSchema)
          .check(z.minLength(1), z.maxLength(LIMITS.machines, 'at most 100 machines on a board')),
      )
      .check(about('fittings and made, left out, stay as they are for the machine of that id.')),
    hours: z.optional(nightFields.hours.def.innerType),
    hoursTyped: z.optional(nightFields.hoursTyped.def.innerType),
    readings: z.optional(nightFields.readings.def.innerType),
    placeOffset: nightFields.placeOffset,
  })
  .register(z.globalRegistry, { id: 'BoardPatch' });

export type BoardPatch = z.output<typeof boardPatchSchema>;

export const boardDoneSchema = z
  .strictObject({
    machine: machineId,
    setting: settingSchema.check(about('What is in the engine now.')),
    at: z.optional(time).check(about('Since when, not before it was posted; now where left out.')),
  })
  .register(z.globalRegistry, { id: 'BoardDone' });

export type BoardDone = z.output<typeof boardDoneSchema>;

const keyText = (characters: number) =>
  z
    .string()
    .check(z.regex(new RegExp(`^[\\w-]{${characters}}={0,2}$`), 'expected base64url of the right length'));

/** A PushSubscription's JSON (W3C Push API) and the machines it is for. */
export const boardSubscriptionSchema = z
  .strictObject({
    subscription: z.object({
      endpoint: z.url().check(z.maxLength(1000, 'at most 1000 characters')),
      keys: z.object({
        p256dh: keyText(87).check(about('65 bytes: a point of P-256, not packed.')),
        auth: keyText(22).check(about('16 bytes.')),
      }),
    }),
    machines: z.array(machineId).check(z.minLength(1), z.maxLength(LIMITS.machines)),
    clock: z
      ._default(z.enum(['24', '12']), '24')
      .check(about('How clock times are written in its messages: on the 24-hour or the 12-hour clock.')),
  })
  .register(z.globalRegistry, { id: 'BoardSubscription' });

export type BoardSubscription = z.output<typeof boardSubscriptionSchema>;

export const boardUnsubscribeSchema = z
  .strictObject({ endpoint: z.url().check(z.maxLength(1000, 'at most 1000 characters')) })
  .register(z.globalRegistry, { id: 'BoardUnsubscribe' });

export const boardPostedSchema = z
  .strictObject({
    id: z.string(),
    keepSecret: z.string().check(about('Changes the board and takes it down. Shown this once.')),
    followSecret: z.string().check(about('Reads it, follows a machine, says what is in. Shown this once.')),
    expiresAt: z.string().check(about('Everything about it is gone then.')),
    revision: z.int(),
  })
  .register(z.globalRegistry, { id: 'BoardPosted' });
