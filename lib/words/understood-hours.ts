import type { PastedHours, UnderstoodColumn } from '@/lib/hours/pasted';
import type { ClockZone } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { formatTemperature } from '@/lib/units/format';
import { kelvin } from '@/lib/units/quantity';
import { capital, counted, listing } from '@/lib/words/listing';
import { dateClockText } from '@/lib/words/times';

const TIMES: Readonly<Record<PastedHours['understood']['times'], string>> = {
  'with-offset': 'times with their offset',
  'with-date': 'times with their dates',
  'clock-only': 'clock times, each after the one before',
  'counted-from-start': 'no times, so one hour per line from the first',
};

/** How the pasted text was read, in two sentences: what it holds, and what was taken for granted. */
export function understoodWords(
  { rows, understood }: PastedHours,
  units: UnitChoice,
  zone: ClockZone,
): string {
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined) return 'No hours.';
  const temperatures = rows.map((row) => row.temperature);
  const [low, high] = [Math.min(...temperatures), Math.max(...temperatures)].map((t) =>
    formatTemperature(kelvin(t), units, 1),
  );
  const found = understood.columns.flatMap(columnWords);
  return [
    `${counted(rows.length, 'hour')} from ${dateClockText(first.at, zone)} to ${dateClockText(last.at, zone)}, ${low} to ${high}.`,
    `Found ${listing([TIMES[understood.times], ...found])}.`,
    understood.turned ? 'The table lay on its side.' : '',
  ]
    .filter((sentence) => sentence !== '')
    .map(capital)
    .join(' ');
}

const NAMES: Readonly<Record<string, string>> = {
  temperature: 'temperatures',
  humidity: 'humidities',
  'dew-point': 'dew points',
  pressure: 'pressures',
};

const UNITS: Readonly<Record<string, string>> = {
  C: '°C',
  F: '°F',
  c: '°C',
  f: '°F',
  percent: 'percent',
  ratio: 'parts of 1',
};

function columnWords({ meaning, unit, unitFrom }: UnderstoodColumn): readonly string[] {
  const name = NAMES[meaning];
  if (name === undefined) return [];
  if (unit === null) return [name];
  const assumed = unitFrom === 'assumed' ? ' (your unit, as none is written)' : '';
  return [`${name} in ${UNITS[unit] ?? unit}${assumed}`];
}
