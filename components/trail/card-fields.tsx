import { Columns, Stack } from '@/components/ui/stack';
import type { Machine } from '@/lib/carb/machine';
import type { TrailFields } from './trail-fields';

type CardFieldsProps = Pick<TrailFields, 'field'> & { readonly machine: Machine };

/** Which lines and columns the card has, and what stands in its cells. */
export function CardFields({ field, machine }: CardFieldsProps) {
  return (
    <Stack>
      <Columns>
        {field('card.warmest')}
        {field('card.coldest')}
        {field('card.step')}
      </Columns>
      <Columns>
        {field('card.lowest')}
        {field('card.highest')}
        {field('card.rise')}
      </Columns>
      {machine.pilot === null ? null : field('card.shows')}
    </Stack>
  );
}
