const plain = (text: string): string => text.toLowerCase().replace(/[_/]+/g, ' ').trim();

/** Zones with every typed word in their name, those that start with the first word of a city first. */
export function matchingZones(query: string, zones: readonly string[]): readonly string[] {
  const words = plain(query)
    .split(/\s+/)
    .filter((word) => word !== '');
  const matching = zones.filter((zone) => words.every((word) => plain(zone).includes(word)));
  const [first = ''] = words;
  const startsCity = (zone: string): boolean => plain(zone.split('/').at(-1) ?? zone).startsWith(first);
  return [...matching.filter(startsCity), ...matching.filter((zone) => !startsCity(zone))];
}
