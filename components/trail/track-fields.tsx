import type { Part } from '@/components/draft/part';
import { useClockZone } from '@/components/store/use-clock-zone';
import { Columns } from '@/components/ui/stack';
import type { RideDraft } from '@/lib/fields/trail/trail-rows';
import { profileFromText } from '@/lib/trail/profile-text';
import { dateClockText } from '@/lib/words/times';
import { AskHeights } from './ask-heights';
import type { TrailFields } from './trail-fields';

type TrackFieldsProps = Pick<TrailFields, 'draft' | 'field'> & { readonly ride: Part<RideDraft> };

/** What a track does not say: the day of the ride, and speed and heights where it has none. */
export function TrackFields({ draft, field, ride: part }: TrackFieldsProps) {
  const { units, ride } = draft.value;
  const zone = useClockZone(ride.timezone);
  const profile = profileFromText(ride.track);
  if (profile === null) return null;
  const first = profile.points[0]?.at ?? null;
  const recorded =
    first === null ? 'The track has no times.' : `Recorded from ${dateClockText(first, zone)}.`;
  return (
    <>
      <Columns>
        {field('ride.startClock', {
          hint: profile.timed
            ? `${recorded} Leave empty to plan that day, else the recorded pace is ridden on the date above.`
            : recorded,
        })}
        {profile.timed ? null : field('ride.speed', { unit: units.elevation === 'ft' ? 'mph' : 'km/h' })}
      </Columns>
      {profile.elevations === 'none' ? (
        <>
          <AskHeights profile={profile} ride={part} />
          <Columns>
            {field('ride.heightStart')}
            {field('ride.heightMiddle')}
            {field('ride.heightEnd')}
          </Columns>
        </>
      ) : null}
    </>
  );
}
