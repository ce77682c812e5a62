import { type Picture, swapOfStair } from '@/lib/plan/night-picture';
import { swapTime } from '@/lib/plan/swap-time';
import type { Instant } from '@/lib/time/instant';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { formatNumber } from '@/lib/units/format';
import { PUT_IN } from './settings';

type Told = { readonly zone: ClockZone; readonly now: Instant };

/**
 * A step of the picture by its place, the longest way to say it first: "Put in 420, 20:00" where it is still to be made,
 * "Put in 420 by 20:15" once it is due, or "Put in 420" where there is no room for that; "410" of what is in already.
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
  const swap = swapOfStair({ stairs, swaps }, place);
  if (swap === null) return [jet];
  const { at, due } = swapTime(swap.from, swap.to, now);
  const act = `${PUT_IN} ${jet}`;
  return [`${act}${due ? ' by' : ','} ${localClock(at, zone)}`, act];
}
