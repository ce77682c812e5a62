import type { Picture } from '@/lib/plan/night-picture';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { formatNumber } from '@/lib/units/format';

/** A step of the picture by its place: "Put in 420, 20:00" where it is still to be made, "410" of what is in already. */
export function stairName(
  { stairs, swaps }: Pick<Picture, 'stairs' | 'swaps'>,
  place: number,
  zone: ClockZone,
): string {
  const stair = stairs[place];
  if (stair === undefined) return '';
  const trim = stair.trim === null ? '' : ` trim ${stair.trim}`;
  const jet = `${formatNumber(stair.size, Number.isInteger(stair.size) ? 0 : 1)}${trim}`;
  const swap = place === 0 ? undefined : swaps.find(({ from, to }) => from <= stair.from && stair.from <= to);
  return swap === undefined ? jet : `Put in ${jet}, ${localClock(swap.from, zone)}`;
}
