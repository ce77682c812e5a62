import { Button } from '@/components/ui/button';
import { FieldError } from '@/components/ui/field';
import { NumberField } from '@/components/ui/number-field';
import { ButtonRow } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import { MOST_PLACES } from '@/lib/trail/ride';
import type { RidePartProps } from './ride-part-props';
import styles from './trail.module.css';
import { NEW_PLACE, type TrailPlaceDraft } from './trail-draft';

/** The places of a ride in order: when it gets there, how long it stays, how high it is. */
export function PlaceRows(props: RidePartProps) {
  const { ride, errors } = props;
  const { places } = ride.value;
  return (
    <div className={styles.rows}>
      {places.map((place, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own and keep their order
        <PlaceRow key={i} {...props} place={place} index={i} />
      ))}
      <FieldError id="places-error">{errors.places}</FieldError>
      <ButtonRow>
        <Button
          disabled={places.length >= MOST_PLACES}
          onClick={() => ride.set('places', [...places, NEW_PLACE])}
        >
          Add a place
        </Button>
      </ButtonRow>
      <p className={styles.source}>A clock time earlier than the one before it is on the next day.</p>
    </div>
  );
}

type PlaceRowProps = RidePartProps & { readonly place: TrailPlaceDraft; readonly index: number };

function PlaceRow({ ride, draft, errors, place, index }: PlaceRowProps) {
  const { places } = ride.value;
  const set = (key: keyof TrailPlaceDraft) => (text: string) =>
    draft.change(`places.${index}.${key}`, (before) => ({
      ...before,
      ride: {
        ...before.ride,
        places: before.ride.places.map((each, i) => (i === index ? { ...each, [key]: text } : each)),
      },
    }));
  const error = (key: keyof TrailPlaceDraft) => errors[`places.${index}.${key}`];
  return (
    <div className={styles.placeRow}>
      <TextField label={`Place ${index + 1}`} maxLength={40} value={place.name} onChange={set('name')} />
      <TextField
        label="Gets there"
        placeholder="10:30"
        autoComplete="off"
        value={place.clock}
        error={error('clock')}
        onChange={set('clock')}
      />
      <NumberField label="Stays" unit="min" value={place.stop} error={error('stop')} onChange={set('stop')} />
      <NumberField
        label="Elevation"
        unit={draft.value.units.elevation}
        value={place.elevation}
        error={error('elevation')}
        onChange={set('elevation')}
      />
      <Button
        aria-label={`Remove ${place.name === '' ? `place ${index + 1}` : place.name}`}
        onClick={() =>
          ride.set(
            'places',
            places.filter((_, i) => i !== index),
          )
        }
      >
        Remove
      </Button>
    </div>
  );
}
