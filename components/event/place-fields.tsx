import { Columns, Stack } from '@/components/ui/stack';
import type { EventFields } from './event-fields';

/** What the event is called and where it is. */
export function PlaceFields({ field }: Pick<EventFields, 'field'>) {
  return (
    <Stack>
      {field('name')}
      <Columns>
        {field('elevation')}
        {field('placeName')}
      </Columns>
      <Columns>
        {field('latitude')}
        {field('longitude')}
      </Columns>
    </Stack>
  );
}
