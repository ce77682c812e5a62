import { wattToHorsepower } from '@/lib/units/convert';
import { formatPercent, formatPower, MINUS } from '@/lib/units/format';
import { type Ratio, ratio, type Watt, watt } from '@/lib/units/quantity';

/** Less horsepower than this would be printed as none. */
const LEAST_HP = 0.05;

/** "2.4 hp", "3 hp": a share of the rated power; null where no power was rated, or too little to print. */
export function horsepowerOf(share: Ratio, ratedPower: Watt | null): string | null {
  if (ratedPower === null) return null;
  const power = watt(Math.abs(share) * ratedPower);
  const tenths = Math.round(wattToHorsepower(power) * 10);
  return wattToHorsepower(power) < LEAST_HP ? null : formatPower(power, tenths % 10 === 0 ? 0 : 1);
}

/** "+3.1 hp" of a change of power; '' where no power was rated, or too little to print. */
export function signedHorsepower(change: Ratio, ratedPower: Watt | null): string {
  const size = horsepowerOf(change, ratedPower);
  return size === null ? '' : `${change < 0 ? MINUS : '+'}${size}`;
}

/** "0.65 % less power (1.3 hp)": what is said of a share of power, with the horsepower it is. */
export function withHorsepower(text: string, share: Ratio, ratedPower: Watt | null): string {
  const power = horsepowerOf(share, ratedPower);
  return power === null ? text : `${text} (${power})`;
}

/** "1.2 % power (2.4 hp)". Never "0.0 %": a share too small for its digits is less than the least of them. */
export function powerText(share: Ratio, ratedPower: Watt | null, digits = 1): string {
  const least = ratio(10 ** -(digits + 2));
  return share < least / 2
    ? withHorsepower(`less than ${formatPercent(least, digits)} power`, least, ratedPower)
    : withHorsepower(`${formatPercent(share, digits)} power`, share, ratedPower);
}
