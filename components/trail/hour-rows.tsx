import { Button } from '@/components/ui/button';
import { FieldError } from '@/components/ui/field';
import { NumberField } from '@/components/ui/number-field';
import { ButtonRow } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { RidePartProps } from './ride-part-props';
import styles from './trail.module.css';
import { type HourDraft, NEW_HOUR } from './trail-draft';

const MOST_HOURS = 24;

/** Temperatures through the day at one height. */
export function HourRows(props: RidePartProps) {
  const { ride, draft, errors } = props;
  const { hours, hoursElevation } = ride.value;
  return (
    <div className={styles.rows}>
      <NumberField
        label="They are for an elevation of"
        unit={draft.value.units.elevation}
        signed
        value={hoursElevation}
        error={errors.hoursElevation}
        onChange={(text) => ride.set('hoursElevation', text)}
      />
      {hours.map((hour, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own and keep their order
        <HourRow key={i} {...props} hour={hour} index={i} />
      ))}
      <FieldError id="hours-error">{errors.hours}</FieldError>
      <ButtonRow>
        <Button disabled={hours.length >= MOST_HOURS} onClick={() => ride.set('hours', [...hours, NEW_HOUR])}>
          Add a time
        </Button>
      </ButtonRow>
    </div>
  );
}

type HourRowProps = RidePartProps & { readonly hour: HourDraft; readonly index: number };

function HourRow({ ride, draft, errors, hour, index }: HourRowProps) {
  const set = (key: keyof HourDraft) => (text: string) =>
    draft.change(`hours.${index}.${key}`, (before) => ({
      ...before,
      ride: {
        ...before.ride,
        hours: before.ride.hours.map((each, i) => (i === index ? { ...each, [key]: text } : each)),
      },
    }));
  return (
    <div className={styles.hourRow}>
      <TextField
        label={`Time ${index + 1}`}
        placeholder="07:00"
        autoComplete="off"
        value={hour.clock}
        error={errors[`hours.${index}.clock`]}
        onChange={set('clock')}
      />
      <NumberField
        label="Temperature"
        signed
        unit={`°${draft.value.units.temperature}`}
        value={hour.temperature}
        error={errors[`hours.${index}.temperature`]}
        onChange={set('temperature')}
      />
      <Button
        aria-label={`Remove time ${index + 1}`}
        onClick={() =>
          ride.set(
            'hours',
            ride.value.hours.filter((_, i) => i !== index),
          )
        }
      >
        Remove
      </Button>
    </div>
  );
}
