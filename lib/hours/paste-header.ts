import type { PressureKind } from '@/lib/air/air';
import { PRESSURE_UNIT_NAMES } from '@/lib/units/entry';
import type { ColumnMeaning } from './pasted';

/** What a title says. Units are written as lib/units reads them behind a number. */
export type Title = {
  readonly meaning: ColumnMeaning;
  readonly unit: string | null;
  readonly pressureKind: PressureKind | null;
};

const MEANINGS: readonly (readonly [RegExp, ColumnMeaning])[] = [
  // First what only sounds like the air itself.
  [
    /feels|chill|apparent|heat ?index|wet ?bulb|frost|wind|gust|rain|precip|cloud|time ?zone|egt|cht/,
    'ignored',
  ],
  [/\b(?:track|road|surface|ice|snow|water)\b/, 'ignored'],
  [/dew/, 'dew-point'],
  [/humid|\brh\b/, 'humidity'],
  [/press|baro|\bqnh\b|\bqfe\b|mslp|\bslp\b|altimeter/, 'pressure'],
  [/temp|^t$|^t2m$|^°?[cf]$/, 'temperature'],
  [/date ?[/& ] ?time|datetime|timestamp|valid|time|hour|clock|^hrs?$/, 'time'],
  [/date|\bday\b/, 'date'],
];

const UNITS: readonly (readonly [RegExp, string])[] = [
  [/in\.? ?hg|"hg/, 'inHg'],
  [/hpa/, 'hPa'],
  [/mbar|\bmb\b|millibar/, 'mbar'],
  [/kpa/, 'kPa'],
  [/mm ?hg/, 'mmHg'],
  ...PRESSURE_UNIT_NAMES.map((name) => [new RegExp(`(?<![a-z])${name}(?![a-z])`), name] as const),
  [/fahrenheit|(?:°|º|deg(?:rees?)?\.?|[([_ ,])\s?f\b|^f$/, 'F'],
  [/celsius|(?:°|º|deg(?:rees?)?\.?|[([_ ,])\s?c\b|^c$/, 'C'],
  [/%|percent/, '%'],
];

const KINDS: readonly (readonly [RegExp, PressureKind])[] = [
  [/\bqnh\b|altimeter/, 'altimeter'],
  [/\bqfe\b|station|absolute|\babs\b/, 'station'],
  [/mslp|\bslp\b|sea/, 'sea-level'],
];

/** What is longer is a sentence, no title. */
const LONGEST_TITLE = 80;

function firstMatch<T>(rules: readonly (readonly [RegExp, T])[], text: string): T | null {
  return rules.find(([pattern]) => pattern.test(text))?.[1] ?? null;
}

/** Reads a title such as "Temp (°F)" or "QNH hPa"; null where no word of it is known. */
export function readTitle(text: string): Title | null {
  if (text.length > LONGEST_TITLE) return null;
  const title = text.toLowerCase().replace(/_/g, ' _').trim();
  const words = title
    .replace(/[([].*?[)\]]/g, ' ')
    .replace(/ _/g, ' ')
    .trim();
  const meaning = firstMatch(MEANINGS, words === '' ? title : words);
  if (meaning === null) return null;
  return {
    meaning,
    unit: firstMatch(UNITS, title),
    pressureKind: meaning === 'pressure' ? firstMatch(KINDS, title) : null,
  };
}

/** The unit of a cell that holds nothing else, such as "[°C]"; null where it is none. */
export function readUnitCell(text: string): string | null {
  if (text.length > LONGEST_TITLE) return null;
  const bare = text.toLowerCase().replace(/[()[\]\s]/g, '');
  return /\d/.test(bare) || bare.length > 10 ? null : firstMatch(UNITS, bare);
}
