import type { RideStop } from '@/lib/trail/ride';
import type { UnitChoice } from '@/lib/units/choice';
import { formatElevation } from '@/lib/units/format';

/** What each place is called: its own name, or what a turning point of a track is. */
export function placeNames(stops: readonly RideStop[], units: UnitChoice): readonly string[] {
  return stops.map((stop, i) => {
    if (stop.name !== '') return stop.name;
    const height = formatElevation(stop.elevation, units);
    if (i === 0) return `the start (${height})`;
    if (i === stops.length - 1) return `the end (${height})`;
    const before = stops[i - 1]?.elevation ?? stop.elevation;
    return `${stop.elevation >= before ? 'the high point' : 'the low point'} (${height})`;
  });
}
