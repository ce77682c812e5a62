import type { PressureKind } from '@/lib/air/air';
import { standardPressure } from '@/lib/air/standard-atmosphere';
import type { PressureSource } from '@/lib/contract/source-name';
import { type Climb, movePressure } from '@/lib/hours/elevation-shift';
import { HOUR_MS, type Instant } from '@/lib/time/instant';
import { type Metre, type Pascal, pascal } from '@/lib/units/quantity';
import type { Copy } from './copy';
import type { SiteHour } from './site-hour';

export type LentPressure = {
  readonly pressure: Pascal;
  readonly pressureFrom: PressureKind;
  readonly pressureBy: PressureSource;
};

/** Beyond its own hours a lender's last pressure is held this long; weather moves it some 10 hPa a day [ms]. */
const HELD_MS = 24 * HOUR_MS;

/**
 * Station pressure at the site for an hour whose service gives none: the pressure of another service's copy at that
 * hour, or else the standard atmosphere, which weather leaves by up to 3 %. Both are marked.
 */
export function lentPressure(at: Instant, elevation: Metre, lender: Copy | null): LentPressure {
  const own = lender === null ? null : pressureOf(lender, at, elevation);
  if (own !== null && lender !== null) return { ...own, pressureBy: lender.by };
  return {
    pressure: standardPressure(elevation),
    pressureFrom: 'standard',
    pressureBy: 'standard-atmosphere',
  };
}

function pressureOf(
  lender: Copy,
  at: Instant,
  elevation: Metre,
): { readonly pressure: Pascal; readonly pressureFrom: PressureKind } | null {
  const after = lender.hours.findIndex((hour) => hour.at >= at);
  const next = lender.hours[after < 0 ? lender.hours.length - 1 : after];
  const last = lender.hours[after > 0 ? after - 1 : 0];
  if (next === undefined || last === undefined) return null;
  if (at - next.at > HELD_MS || last.at - at > HELD_MS) return null;
  const move = { from: lender.elevation, to: elevation };
  const [before, behind] = [atSite(last, move), atSite(next, move)];
  if (before === null || behind === null) return null;
  const share = after <= 0 || next.at === last.at ? Number(after < 0) : (at - last.at) / (next.at - last.at);
  return { pressure: pascal(before + (behind - before) * share), pressureFrom: next.pressureFrom };
}

function atSite({ pressure, temperature }: SiteHour, move: Climb): Pascal | null {
  return pressure === null ? null : movePressure({ pressure, temperature }, move);
}
