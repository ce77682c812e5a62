import { readCoordinatePair } from '@/components/event/coordinate';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Section } from '@/components/ui/section';
import { Columns } from '@/components/ui/stack';
import { usualFallText } from './first-draft';
import { HourRows } from './hour-rows';
import type { RidePartProps } from './ride-part-props';
import styles from './trail.module.css';
import type { RideForecast } from './use-ride-forecast';

const AIRS = [
  { value: 'typed', label: 'Typed temperatures' },
  { value: 'forecast', label: 'Forecast' },
] as const;

/** How cold the ride will be, at one height, and how the cold changes with height. */
export function RideAirFields(props: RidePartProps & { readonly forecast: RideForecast }) {
  const { ride, draft, errors, forecast } = props;
  const { units } = draft.value;
  const { air, fall } = ride.value;
  return (
    <Section title="The air" level={3}>
      <Choice label="Temperatures" value={air} options={AIRS} onChange={(value) => ride.set('air', value)} />
      {air === 'typed' ? <HourRows {...props} /> : <ForecastFields {...props} />}
      {forecast.credit === null ? null : (
        <p className={styles.source}>
          <a href={forecast.credit.url ?? undefined}>{forecast.credit.text}</a>
        </p>
      )}
      <Columns>
        <NumberField
          label={`Colder per 1000 ${units.elevation} up`}
          hint={`Usually ${usualFallText(units)}. Less, or negative, where cold lies in the valley.`}
          signed
          unit={`°${units.temperature}`}
          value={fall}
          error={errors.fall}
          onChange={(text) => ride.set('fall', text)}
        />
      </Columns>
    </Section>
  );
}

function ForecastFields({ ride, errors, forecast }: RidePartProps & { readonly forecast: RideForecast }) {
  const enter = (axis: 'latitude' | 'longitude', text: string) => {
    const both = readCoordinatePair(text);
    if (both === null) ride.set(axis, text);
    else ride.setAll(both);
  };
  return (
    <>
      <Columns>
        <NumberField
          label="Latitude of the start"
          hint="Such as 47.42, or both at once as a map gives them."
          signed
          inputMode="text"
          value={ride.value.latitude}
          error={errors.latitude}
          onChange={(text) => enter('latitude', text)}
        />
        <NumberField
          label="Longitude of the start"
          hint="Such as −93.61 or 93.61 W."
          signed
          inputMode="text"
          value={ride.value.longitude}
          error={errors.longitude}
          onChange={(text) => enter('longitude', text)}
        />
      </Columns>
      <p role="status">{forecast.asking ? 'Asking for the forecast…' : forecast.problem}</p>
    </>
  );
}
