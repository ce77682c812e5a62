import { formatNumber } from '@/lib/units/format';
import { counted } from './listing';

/** What the part of the club page says that sends and reads out. */
export const SENDING = {
  offer:
    'The whole briefing as a link or codes for everybody to pick a name from, as text for a group chat, as an announcement to read out, or one racer’s sheet as a picture.',
  link: 'Opens a page where each racer picks a name and sees the own plan. It holds the night as it stands now and does not follow; a board does.',
  text: 'Plain words for a group chat. As they stand now.',
  say: 'To be read out. It follows the clock and the plan: read it again each hour.',
  picture:
    'The racer’s sheet as it is printed, as words and table. Boxes to tick are left off; the letters are those of this device.',
  noPicture: 'This browser makes no picture of it. Print the sheet instead, or take a screenshot of it.',
} as const;

/** Longer links are cut by some chat and mail programs (common practice, no source). */
const SAFE_LINK = 2000;

/** How long a link is, and what that means for whoever sends it. */
export function linkSizeWords(link: string, racers: number): string {
  const size = `${counted(racers, 'racer')} in ${formatNumber(link.length)} characters.`;
  return link.length > SAFE_LINK
    ? `${size} Some chat programs cut a link this long: try it once, or show the codes.`
    : size;
}

/** More codes than this nobody scans in the cold (judgement). */
const PATIENT = 3;

/** Before codes that are scanned one after the other. */
export function codesWords(count: number): string {
  if (count === 1) return 'One code holds all of it.';
  const all = `It takes ${count} codes. Each phone scans all of them, in any order, with the same browser; it says which are still missing.`;
  return count > PATIENT ? `${all} A board takes one code, however many racers, and follows.` : all;
}

/** On a phone that has scanned some of the codes. */
export function missingCodesWords(missing: readonly number[], of: number): string {
  const here = of - missing.length;
  return `${here} of ${of} codes are in. Scan ${missing.length === 1 ? 'the last one' : 'the others'}: ${missing.join(', ')}.`;
}

/** Beside the choice to give a place exactly. */
export const ROUNDED_PLACE =
  'Off, the place is rounded to a tenth of a degree: enough for a forecast, too coarse for a driveway.';
