import type { JudgedBy, Verdict } from '@/lib/carb/observation';
import type { ElevationUnit } from '@/lib/units/choice';
import { MILE_M } from '@/lib/units/convert';
import { formatNumber, NO_BREAK_SPACE } from '@/lib/units/format';

/** "right", "1.5 sizes rich", "lean"; "not judged" where nobody did. */
export function verdictText({
  verdict,
  sizes,
}: {
  readonly verdict: Verdict | null;
  readonly sizes: number | null;
}): string {
  if (verdict === null) return 'not judged';
  if (verdict === 'right' || sizes === null) return verdict;
  return `${sizes} size${sizes === 1 ? '' : 's'} ${verdict}`;
}

const JUDGES: Readonly<Record<JudgedBy, string>> = {
  plugs: 'plugs',
  'exhaust-temperature': 'exhaust temperature',
  wideband: 'wideband',
  'piston-wash': 'piston wash',
  clock: 'the clock',
  feel: 'feel',
};

export function judgedByText(judge: JudgedBy): string {
  return JUDGES[judge];
}

export type SpeedUnit = 'mph' | 'km/h';

/** Who reads heights in feet reads speeds in miles. */
export function speedUnit({ elevation }: { readonly elevation: ElevationUnit }): SpeedUnit {
  return elevation === 'ft' ? 'mph' : 'km/h';
}

const KMH_PER_MPH = MILE_M / 1000;

export function speedIn(kmh: number, unit: SpeedUnit): number {
  return unit === 'mph' ? kmh / KMH_PER_MPH : kmh;
}

export function speedFrom(value: number, unit: SpeedUnit): number {
  return unit === 'mph' ? value * KMH_PER_MPH : value;
}

export function speedText(kmh: number, unit: SpeedUnit): string {
  return `${formatNumber(speedIn(kmh, unit), 1)}${NO_BREAK_SPACE}${unit}`;
}

export function secondsText(seconds: number): string {
  return `${formatNumber(seconds, 3).replace(/\.?0+$/, '')}${NO_BREAK_SPACE}s`;
}
