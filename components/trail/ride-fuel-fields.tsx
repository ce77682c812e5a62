import { Columns } from '@/components/ui/stack';
import type { TrailFields } from './trail-fields';

/** What the machine drinks at its baseline, so that the day's fuel can be told from it. */
export function RideFuelFields({ draft, field }: Pick<TrailFields, 'draft' | 'field'>) {
  const { units, ride } = draft.value;
  const inMiles = units.elevation === 'ft';
  const per100 = inMiles ? 'US gallons per 100 mi' : 'Litres per 100 km';
  const perHour = inMiles ? 'US gallons an hour' : 'Litres an hour';
  return (
    <>
      {field('ride.fuel', {
        options: [
          { value: 'per-hour', label: perHour },
          { value: 'per-distance', label: per100 },
        ],
      })}
      <Columns>
        {field('ride.fuelUse', {
          label: ride.fuel === 'per-hour' ? `${perHour} on the move` : per100,
        })}
        {field('ride.distance')}
      </Columns>
    </>
  );
}
