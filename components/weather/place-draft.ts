import type { Untaken } from '@/components/draft/untaken';
import type { PlaceJson } from '@/lib/contract/event';
import type { PlaceDraft } from '@/lib/fields/place/place-rows';
import { numberText } from '@/lib/units/entry-text';

/** A place that was searched for and not chosen is not the place of the forecast; null where there is none. */
export function untakenSearch({
  search,
  searched,
}: Pick<PlaceDraft, 'search' | 'searched'>): Untaken<PlaceDraft> | null {
  if (search.trim() === '' || search === searched) return null;
  return {
    words: `“${search.trim()}” was typed to search for a place, and none was chosen: the coordinates below count. Choose one from the list, or save without it.`,
    take: null,
    leave: (before) => ({ ...before, search: '' }),
  };
}

/** The draft's fields for a point that was found: four decimals are eleven metres. */
export function pointFields({ name, latitude, longitude }: PlaceJson): Partial<PlaceDraft> {
  return { name, latitude: numberText(latitude, 4), longitude: numberText(longitude, 4) };
}
