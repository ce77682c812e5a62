import { Section } from '@/components/ui/section';
import { Columns } from '@/components/ui/stack';
import { usualFallText } from '@/lib/fields/trail/first-draft';
import { HourRows } from './ride-rows';
import styles from './trail.module.css';
import type { TrailFields } from './trail-fields';
import type { AskedHours } from './use-ride-forecast';

/** How cold the ride will be, at one height, and how the cold changes with height. */
export function RideAirFields({ asked, ...fields }: TrailFields & { readonly asked: AskedHours }) {
  const { draft, field } = fields;
  const { units, ride } = draft.value;
  return (
    <Section title="The air" level={3}>
      {field('ride.air')}
      {ride.air === 'typed' ? (
        <HourRows {...fields} />
      ) : (
        <>
          <Columns>
            {field('ride.latitude')}
            {field('ride.longitude')}
          </Columns>
          {field('ride.pastHours')}
          <p role="status">{asked.asking ? 'Asking the weather service…' : (asked.problem ?? asked.note)}</p>
        </>
      )}
      {asked.credit === null ? null : (
        <p className={styles.source}>
          <a href={asked.credit.url ?? undefined}>{asked.credit.text}</a>
        </p>
      )}
      <Columns>
        {field('ride.fall', {
          label: `Colder per 1000 ${units.elevation} up`,
          hint: `Usually ${usualFallText(units)}. Less, or negative, where cold lies in the valley.`,
        })}
      </Columns>
    </Section>
  );
}
