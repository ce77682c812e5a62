import { useClockZone } from '@/components/store/use-clock-zone';
import { NumberField } from '@/components/ui/number-field';
import { Columns } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import { profileFromText } from '@/lib/trail/profile-text';
import { dateClockText } from '@/lib/words/times';
import type { RidePartProps } from './ride-part-props';

/** What a track does not say: the day of the ride, and speed and heights where it has none. */
export function TrackFields({ ride, draft, errors }: RidePartProps) {
  const { units } = draft.value;
  const { track, startClock, speed, timezone, heightStart, heightMiddle, heightEnd } = ride.value;
  const zone = useClockZone(timezone);
  const profile = profileFromText(track);
  if (profile === null) return null;
  const first = profile.points[0]?.at ?? null;
  const recorded =
    first === null ? 'The track has no times.' : `Recorded from ${dateClockText(first, zone)}.`;
  return (
    <>
      <Columns>
        <TextField
          label="Starts at"
          hint={
            profile.timed
              ? `${recorded} Leave empty to plan that day, else the recorded pace is ridden on the date above.`
              : recorded
          }
          placeholder="08:00"
          autoComplete="off"
          value={startClock}
          error={errors.startClock}
          onChange={(text) => ride.set('startClock', text)}
        />
        {profile.timed ? null : (
          <NumberField
            label="Average speed, stops included"
            unit={units.elevation === 'ft' ? 'mph' : 'km/h'}
            value={speed}
            error={errors.speed}
            onChange={(text) => ride.set('speed', text)}
          />
        )}
      </Columns>
      {profile.elevations === 'none' ? (
        <Columns>
          {(
            [
              ['heightStart', 'Elevation of the start', heightStart],
              ['heightMiddle', 'Half way along', heightMiddle],
              ['heightEnd', 'Of the end', heightEnd],
            ] as const
          ).map(([name, label, value]) => (
            <NumberField
              key={name}
              label={label}
              unit={units.elevation}
              value={value}
              error={errors[name]}
              onChange={(text) => ride.set(name, text)}
            />
          ))}
        </Columns>
      ) : null}
    </>
  );
}
