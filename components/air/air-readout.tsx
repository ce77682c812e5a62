import { type AirJson, airFromJson } from '@/lib/contract/air-from-json';
import type { UnitChoice } from '@/lib/units/choice';
import { formatElevation, formatPressure } from '@/lib/units/format';
import { densityText } from '@/lib/words/density';

/** What typed numbers come to as air: a check by eye. Nothing until they can be read. */
export function AirReadout({ air, units }: { readonly air: AirJson | null; readonly units: UnitChoice }) {
  const read = air === null ? null : airFromJson(air);
  if (read === null || !read.ok) return null;
  const { pressure, pressureFrom, densityAltitude } = read.value;
  const kind = pressureFrom === 'standard' ? 'about ' : '';
  return (
    <p>
      That is a station pressure of {kind}
      <strong>{formatPressure(pressure, units)}</strong>, a density of{' '}
      <strong>{densityText(read.value, units)}</strong> and a density altitude of{' '}
      <strong>{formatElevation(densityAltitude, units)}</strong>.
    </p>
  );
}
