import type { Machine } from '@/lib/carb/machine';
import { listing } from '@/lib/words/listing';

/** One choice for each different baseline jet: "1 and 3 (410)", "2 (400)". The value is the first carburettor's index. */
export function carburettorOptions({
  carburettors,
}: Pick<Machine, 'carburettors'>): readonly { readonly value: string; readonly label: string }[] {
  const mains = [...new Set(carburettors.map(({ main }) => main))];
  return mains.map((main) => {
    const places = carburettors.flatMap((each, i) => (each.main === main ? [i] : []));
    return {
      value: String(places[0]),
      label: `${listing(places.map((place) => String(place + 1)))} (${main})`,
    };
  });
}
