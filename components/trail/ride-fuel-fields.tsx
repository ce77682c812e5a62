import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Columns } from '@/components/ui/stack';
import type { RidePartProps } from './ride-part-props';

/** What the machine drinks at its baseline, so that the day's fuel can be told from it. */
export function RideFuelFields({ ride, draft, errors }: RidePartProps) {
  const { units } = draft.value;
  const { fuel, fuelAmount, distance, way } = ride.value;
  const length = units.elevation === 'ft' ? 'mi' : 'km';
  return (
    <>
      <Choice
        label="Fuel at the baseline"
        hint="What it drank when the baseline was proven, ridden as you ride."
        value={fuel}
        options={[
          { value: 'per-hour', label: 'Litres an hour' },
          { value: 'per-distance', label: `Litres per 100 ${length}` },
        ]}
        onChange={(value) => ride.set('fuel', value)}
      />
      <Columns>
        <NumberField
          label={fuel === 'per-hour' ? 'Litres in an hour on the move' : `Litres per 100 ${length}`}
          unit="L"
          value={fuelAmount}
          error={errors.fuelAmount}
          onChange={(text) => ride.set('fuelAmount', text)}
        />
        {fuel === 'per-distance' && way === 'typed' ? (
          <NumberField
            label="Length of the ride"
            unit={length}
            value={distance}
            error={errors.distance}
            onChange={(text) => ride.set('distance', text)}
          />
        ) : null}
      </Columns>
    </>
  );
}
