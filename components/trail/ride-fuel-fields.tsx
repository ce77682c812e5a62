import { Columns } from '@/components/ui/stack';
import type { TrailFields } from './trail-fields';

/** What the machine drinks at its baseline, so that the day's fuel can be told from it. */
export function RideFuelFields({ draft, field }: Pick<TrailFields, 'draft' | 'field'>) {
  const { units, ride } = draft.value;
  const per100 = `Litres per 100 ${units.elevation === 'ft' ? 'mi' : 'km'}`;
  return (
    <>
      {field('ride.fuel', {
        options: [
          { value: 'per-hour', label: 'Litres an hour' },
          { value: 'per-distance', label: per100 },
        ],
      })}
      <Columns>
        {field('ride.fuelAmount', {
          label: ride.fuel === 'per-hour' ? 'Litres in an hour on the move' : per100,
        })}
        {field('ride.distance')}
      </Columns>
    </>
  );
}
