import type { UnitChoice } from '@/lib/units/choice';
import { formatTemperatureStep } from '@/lib/units/format';
import { kelvinDifference } from '@/lib/units/quantity';

/** Beside a reading that came from a station: "From KXYZ, ±3.4 °F." '' for one of the track. */
export function readFromText(
  { from, sd }: { readonly from?: string; readonly sd?: { readonly temperature: number } },
  units: UnitChoice,
): string {
  if (from === undefined) return '';
  const size =
    sd === undefined ? '' : `, ±${formatTemperatureStep(kelvinDifference(sd.temperature), units, 1)}`;
  return `From ${from}${size}.`;
}
