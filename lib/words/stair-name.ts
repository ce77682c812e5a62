import type { Picture } from '@/lib/plan/night-picture';
import { swapTime } from '@/lib/plan/swap-time';
import type { Instant } from '@/lib/time/instant';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { formatNumber } from '@/lib/units/format';

type Told = { readonly zone: ClockZone; readonly now: Instant };

/**
 * A step of the picture by its place, the longest way to say it first: "Put in 420, 20:00" where it is still to be made,
 * "Put in 420 by 20:15" once it is due, or "420" where there is no room for that; "410" of what is in already.
 */
export function stairNames(
  { stairs, swaps }: Pick<Picture, 'stairs' | 'swaps'>,
  place: number,
  { zone, now }: Told,
): readonly string[] {
  const stair = stairs[place];
  if (stair === undefined) return [];
  const trim = stair.trim === null ? '' : ` trim ${stair.trim}`;
  const jet = `${formatNumber(stair.size, Number.isInteger(stair.size) ? 0 : 1)}${trim}`;
  const swap = place === 0 ? undefined : swaps.find(({ from, to }) => from <= stair.from && stair.from <= to);
  if (swap === undefined) return [jet];
  const { at, due } = swapTime(swap.from, swap.to, now);
  return [`Put in ${jet}${due ? ' by' : ','} ${localClock(at, zone)}`, jet];
}
