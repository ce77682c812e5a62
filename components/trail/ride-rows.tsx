import { groupFields } from '@/components/draft/fields-of';
import { Button } from '@/components/ui/button';
import { FieldError } from '@/components/ui/field';
import { ButtonRow } from '@/components/ui/stack';
import type { FieldGroup, FieldRows, ValuesOf } from '@/lib/fields/field-row';
import { NEW_HOUR, NEW_PLACE, RIDE_HOUR, RIDE_PLACE, type RideDraft } from '@/lib/fields/trail/trail-rows';
import { MOST_PLACES } from '@/lib/trail/ride';
import { FieldLine } from './field-line';
import styles from './trail.module.css';
import type { TrailFields } from './trail-fields';

const MOST_HOURS = 24;

type List = 'places' | 'hours';

/** The entries of one of the ride's lists, and the ways to change it. */
function rideList<K extends List, R extends FieldRows>(
  { draft, bind }: TrailFields,
  list: K,
  group: FieldGroup<R>,
) {
  const { ride, units } = draft.value;
  type Entry = RideDraft[K][number];
  const entries: readonly Entry[] = ride[list];
  const change = (step: string | null, next: (entries: readonly Entry[]) => readonly Entry[]) =>
    draft.change(step, (before) => ({
      ...before,
      ride: { ...before.ride, [list]: next(before.ride[list]) },
    }));
  return {
    entries,
    add: (entry: Entry) => change(null, (all) => [...all, entry]),
    remove: (index: number) => change(null, (all) => all.filter((_, i) => i !== index)),
    fieldsAt: (index: number) =>
      groupFields({
        group,
        values: entries[index] as ValuesOf<R>,
        units,
        prefix: `${list}.${index}.`,
        bind,
        put: (step, values) =>
          change(step, (all) => all.map((each, i) => (i === index ? { ...each, ...values } : each))),
      }),
  };
}

/** The places of a ride in order: when it gets there, how long it stays, how high it is. */
export function PlaceRows(fields: TrailFields) {
  const { entries, add, remove, fieldsAt } = rideList(fields, 'places', RIDE_PLACE);
  return (
    <div className={styles.rows}>
      {entries.map(({ name }, i) => {
        const field = fieldsAt(i);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own and keep their order
          <FieldLine key={i} name={`Place ${i + 1}`} className={styles.placeRow}>
            {field('name', { label: `Place ${i + 1}` })}
            {field('clock')}
            {field('stop')}
            {field('elevation')}
            <Button aria-label={`Remove ${name === '' ? `place ${i + 1}` : name}`} onClick={() => remove(i)}>
              Remove
            </Button>
          </FieldLine>
        );
      })}
      <FieldError id="places-error">{fields.errors.places}</FieldError>
      <ButtonRow>
        <Button disabled={entries.length >= MOST_PLACES} onClick={() => add(NEW_PLACE)}>
          Add a place
        </Button>
      </ButtonRow>
      <p className={styles.source}>A clock time earlier than the one before it is on the next day.</p>
    </div>
  );
}

/** Temperatures through the day at one height. */
export function HourRows(fields: TrailFields) {
  const { entries, add, remove, fieldsAt } = rideList(fields, 'hours', RIDE_HOUR);
  return (
    <div className={styles.rows}>
      {fields.field('ride.hoursElevation')}
      {entries.map((_, i) => {
        const field = fieldsAt(i);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own and keep their order
          <FieldLine key={i} name={`Time ${i + 1}`} className={styles.hourRow}>
            {field('clock', { label: `Time ${i + 1}` })}
            {field('temperature')}
            <Button aria-label={`Remove time ${i + 1}`} onClick={() => remove(i)}>
              Remove
            </Button>
          </FieldLine>
        );
      })}
      <FieldError id="hours-error">{fields.errors.hours}</FieldError>
      <ButtonRow>
        <Button disabled={entries.length >= MOST_HOURS} onClick={() => add(NEW_HOUR)}>
          Add a time
        </Button>
      </ButtonRow>
    </div>
  );
}
