import { clockOf } from '@/lib/fields/clock-text';
import type { FieldReader } from '@/lib/fields/field-reader';
import { WAY_KM } from '@/lib/fields/number-kinds';
import { readNumberRow } from '@/lib/fields/table-values';
import { type RideDraft, TRAIL } from '@/lib/fields/trail/trail-rows';
import type { Instant } from '@/lib/time/instant';
import { profileFromText } from '@/lib/trail/profile-text';
import type { Ride } from '@/lib/trail/ride';
import { ridingTimes } from '@/lib/trail/riding-times';
import { rideOfTrack } from '@/lib/trail/track-ride';
import { kilometrePerHourToSpeed } from '@/lib/units/convert';
import { clockProblemSentence } from '@/lib/words/clock-problems';
import { trackProblemSentence } from '@/lib/words/gpx-problems';
import { rideProblemSentence } from '@/lib/words/ride';
import { heightOf } from './read-ride-fields';

/** A ride along a track, with what the form adds to it. */
export function trackRide(draft: RideDraft, zone: string, fields: FieldReader): Ride | null {
  const { rows } = TRAIL.ride;
  const profile = profileFromText(draft.track);
  if (profile === null) return null;
  const needsHeights = profile.elevations === 'none';
  const typedHeights = [draft.heightStart, draft.heightMiddle, draft.heightEnd].filter(
    (text) => text.trim() !== '',
  );
  // What is missing is said as a whole, before each of its fields; and alone, where none was begun with.
  if (needsHeights && typedHeights.length < 3)
    fields.complain('track', trackProblemSentence({ code: 'track-without-heights' }));
  const start = startOf(draft, zone, fields);
  const speed = readNumberRow(rows.speed, draft.speed, 'speed', fields);
  const unit = WAY_KM[fields.units.elevation];
  if (speed !== undefined && !(speed >= unit && speed <= 200 * unit))
    fields.complain('speed', 'An average speed from 1 to 200.');
  const heights =
    needsHeights && typedHeights.length > 0
      ? ([
          heightOf(rows.heightStart, draft.heightStart, 'heightStart', fields),
          heightOf(rows.heightMiddle, draft.heightMiddle, 'heightMiddle', fields),
          heightOf(rows.heightEnd, draft.heightEnd, 'heightEnd', fields),
        ] as const)
      : null;
  if (fields.errors().speed !== undefined || fields.errors().startClock !== undefined) return null;
  const [low, middle, end] = heights ?? [null, null, null];
  const ride = rideOfTrack(profile, {
    start,
    speed: speed === undefined ? null : kilometrePerHourToSpeed(speed),
    heights: low === null || middle === null || end === null ? null : { start: low, middle, end },
  });
  if (ride.ok) return ride.value;
  const { reason } = ride;
  switch (reason.code) {
    case 'track-without-times':
      fields.complain('startClock', trackProblemSentence(reason));
      return null;
    case 'track-without-heights':
    case 'track-without-way':
      fields.complain('track', trackProblemSentence(reason));
      return null;
    default:
      fields.complain(
        'track',
        rideProblemSentence(reason, (index) => `point ${index + 1}`),
      );
      return null;
  }
}

/** null where no start was typed: the times of the track count. */
function startOf(draft: RideDraft, zone: string, fields: FieldReader): Instant | null {
  if (draft.startClock.trim() === '') return null;
  const clock = clockOf(draft.startClock);
  if (clock === null) {
    fields.complain('startClock', 'Type a clock time, such as 08:00 or 8 am.');
    return null;
  }
  const times = ridingTimes(draft.date, [clock], zone);
  if (times.ok) return times.value[0] ?? null;
  fields.complain(
    times.reason.problem.code === 'not-a-date' ? 'date' : 'startClock',
    clockProblemSentence(times.reason.problem),
  );
  return null;
}
