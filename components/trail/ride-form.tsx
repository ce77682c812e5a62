import { part } from '@/components/draft/part';
import type { DraftState } from '@/components/draft/use-draft';
import { ZoneField } from '@/components/event/zone-field';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Section } from '@/components/ui/section';
import { Columns, Stack } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import { GpxField } from './gpx-field';
import { PlaceRows } from './place-rows';
import type { RideReading } from './read-ride';
import { RideAirFields } from './ride-air-fields';
import { RideFuelFields } from './ride-fuel-fields';
import type { RidePartProps } from './ride-part-props';
import { TrackFields } from './track-fields';
import type { TrailDraft } from './trail-draft';
import type { RideForecast } from './use-ride-forecast';

type RideFormProps = {
  readonly draft: DraftState<TrailDraft>;
  readonly reading: RideReading;
  readonly forecast: RideForecast;
};

const WAYS = [
  { value: 'typed', label: 'Places and times' },
  { value: 'track', label: 'A GPX track' },
] as const;

/** Where, when, how cold, and what it drinks. */
export function RideForm({ draft, reading, forecast }: RideFormProps) {
  const ride = part(draft, 'ride');
  const { errors } = reading;
  const parts = { ride, draft, errors };
  const { way, date, timezone, swapMinutes } = ride.value;
  return (
    <Stack>
      <Choice label="The ride" value={way} options={WAYS} onChange={(value) => ride.set('way', value)} />
      <Columns>
        <TextField
          label="Date"
          type="date"
          value={date}
          error={errors.date}
          onChange={(text) => ride.set('date', text)}
        />
        <ZoneField
          name="timezone"
          label="Time zone"
          hint="Type a big city of it, such as Denver or Oslo. All clock times are told in it."
          value={timezone}
          error={errors.timezone}
          onChange={(text) => ride.set('timezone', text)}
        />
      </Columns>
      {way === 'typed' ? <PlaceRows {...parts} /> : <TrackWay {...parts} />}
      <RideAirFields {...parts} forecast={forecast} />
      <Section title="Stops and fuel" level={3}>
        <Columns>
          <NumberField
            label="A swap of mains in the snow takes"
            unit="min"
            value={swapMinutes}
            error={errors.swapMinutes}
            onChange={(text) => ride.set('swapMinutes', text)}
          />
        </Columns>
        <RideFuelFields {...parts} />
      </Section>
    </Stack>
  );
}

function TrackWay(parts: RidePartProps) {
  return (
    <>
      <GpxField {...parts} />
      <TrackFields {...parts} />
    </>
  );
}
