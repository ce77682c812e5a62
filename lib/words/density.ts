import type { Air } from '@/lib/air/air';
import type { UnitChoice } from '@/lib/units/choice';
import { formatDensity, formatPercent } from '@/lib/units/format';

/**
 * How thick air is: in kg/m³, or, for whoever reads °F, as a share of the standard's air at sea level, since nobody who
 * thinks in inches of mercury knows what 1.287 kg/m³ is.
 */
export function densityText(air: Pick<Air, 'density' | 'relativeDensity'>, units: UnitChoice): string {
  if (units.temperature === 'C') return formatDensity(air.density);
  return `${formatPercent(air.relativeDensity, 1)} of standard`;
}
