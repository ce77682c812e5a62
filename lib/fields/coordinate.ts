export type Axis = 'latitude' | 'longitude';

const MOST: Readonly<Record<Axis, number>> = { latitude: 90, longitude: 180 };
const NEGATIVE = /[SW]/;
const LETTERS: Readonly<Record<Axis, RegExp>> = { latitude: /[NS]/, longitude: /[EW]/ };

/** Longer than any pair of coordinates; keeps a pasted novel from being searched. */
const LONGEST = 120;

/** Degrees; minutes and seconds where they are typed. */
const DEGREES =
  /^([+-])?(\d+(?:\.\d+)?)(?:\s*°\s*|\s+|$)(?:(\d+(?:\.\d+)?)\s*['′]?\s*)?(?:(\d+(?:\.\d+)?)\s*["″]?\s*)?$/;

/**
 * A coordinate as typed: "44.98", "-93,26", "93.26 W", "44°58'48\" N". null where it is none or out of range.
 */
export function readCoordinate(text: string, axis: Axis): number | null {
  if (text.length > LONGEST) return null;
  const plain = text
    .trim()
    .toUpperCase()
    .replace(/[−–]/g, '-')
    .replace(/(\d),(?=\d)/g, '$1.');
  const letters = plain.match(/[NSEW]/g) ?? [];
  const letter = letters[0];
  if (letters.length > 1 || (letter !== undefined && !LETTERS[axis].test(letter))) return null;
  const match = DEGREES.exec(plain.replace(/[NSEW]/, '').trim());
  if (match === null) return null;
  const [, sign, degrees, minutes = '0', seconds = '0'] = match;
  if (Number(minutes) >= 60 || Number(seconds) >= 60) return null;
  if (letter !== undefined && sign === '-') return null;
  const size = Number(degrees) + Number(minutes) / 60 + Number(seconds) / 3600;
  const negative = sign === '-' || (letter !== undefined && NEGATIVE.test(letter));
  return size > MOST[axis] ? null : negative && size > 0 ? -size : size;
}

/** Both coordinates from one text, as a map gives them: "44.9778, -93.2650"; null where there are not two. */
export function readCoordinatePair(
  text: string,
): { readonly latitude: string; readonly longitude: string } | null {
  if (text.length > LONGEST) return null;
  const parts = text
    .trim()
    .split(/\s*[,;]\s+|\s*;\s*|\s*,(?=\s*[-−+]?\d{1,3}\.\d)/)
    .filter((part) => part !== '');
  const [latitude, longitude] = parts;
  if (parts.length !== 2 || latitude === undefined || longitude === undefined) return null;
  const both =
    readCoordinate(latitude, 'latitude') !== null && readCoordinate(longitude, 'longitude') !== null;
  return both ? { latitude, longitude } : null;
}
