import { part } from '@/components/draft/part';
import type { DraftState } from '@/components/draft/use-draft';
import { ZoneField } from '@/components/event/zone-field';
import { Section } from '@/components/ui/section';
import { Columns, Stack } from '@/components/ui/stack';
import type { TrailDraft } from '@/lib/fields/trail/trail-rows';
import { GpxField } from './gpx-field';
import type { RideReading } from './read-ride';
import { RideAirFields } from './ride-air-fields';
import { RideFuelFields } from './ride-fuel-fields';
import { PlaceRows } from './ride-rows';
import { TrackFields } from './track-fields';
import { trailFields } from './trail-fields';
import type { AskedHours } from './use-ride-forecast';

type RideFormProps = {
  readonly draft: DraftState<TrailDraft>;
  readonly reading: RideReading;
  readonly asked: AskedHours;
};

/** Where, when, how cold, and what it drinks. */
export function RideForm({ draft, reading: { errors }, asked }: RideFormProps) {
  const ride = part(draft, 'ride');
  const fields = trailFields(draft, errors);
  const { field } = fields;
  return (
    <Stack>
      {field('ride.way')}
      <Columns>
        {field('ride.date')}
        <ZoneField
          name="timezone"
          label="Time zone"
          hint="Type a big city of it, such as Denver or Oslo. All clock times are told in it."
          value={ride.value.timezone}
          error={errors.timezone}
          onChange={(text) => ride.set('timezone', text)}
        />
      </Columns>
      {ride.value.way === 'typed' ? (
        <PlaceRows {...fields} />
      ) : (
        <>
          <GpxField ride={ride} errors={errors} units={draft.value.units} />
          <TrackFields {...fields} ride={ride} />
        </>
      )}
      <RideAirFields {...fields} asked={asked} />
      <Section title="Stops and fuel" level={3}>
        <Columns>{field('ride.swapMinutes')}</Columns>
        <RideFuelFields {...fields} />
      </Section>
    </Stack>
  );
}
