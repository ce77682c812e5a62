import { readPastedHours } from '@/lib/hours/paste';
import type { PastedHours, PasteOptions, PasteProblem } from '@/lib/hours/pasted';
import { isoLocal } from '@/lib/time/zone';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';

export const EVENING: PasteOptions = {
  date: '2027-01-16',
  zone: 'America/Chicago',
  temperatureUnit: 'F',
  pressureUnit: 'inHg',
};

export function pasted(text: string, options: Partial<PasteOptions> = {}): PastedHours {
  const result = readPastedHours(text, { ...EVENING, ...options });
  if (!result.ok) throw new Error(JSON.stringify(result.reason));
  return result.value;
}

export function problem(text: string, options: Partial<PasteOptions> = {}): PasteProblem {
  const result = readPastedHours(text, { ...EVENING, ...options });
  if (result.ok) throw new Error('was read');
  return result.reason;
}

export function question(text: string, options: Partial<PasteOptions> = {}): string {
  const reason = problem(text, options);
  return reason.code === 'ask'
    ? reason.questions.map((asked) => asked.code).join('+')
    : `not asked: ${reason.code}`;
}

const rounded = (value: number): number => Number(value.toFixed(2));

/** "01-16 22:00 -12.5" for each row, in local time and °C. */
export function lines(hours: PastedHours, zone = EVENING.zone): string[] {
  return hours.rows.map(
    ({ at, temperature }) =>
      `${isoLocal(at, zone).slice(5, 16).replace('T', ' ')} ${rounded(kelvinToCelsius(temperature))}`,
  );
}

export const celsius = (hours: PastedHours): number[] =>
  hours.rows.map(({ temperature }) => rounded(kelvinToCelsius(temperature)));
export const hectopascals = (hours: PastedHours): (number | null)[] =>
  hours.rows.map(({ pressure }) => (pressure === null ? null : rounded(pascalToHectopascal(pressure))));
export const columnsOf = (hours: PastedHours): string[] =>
  hours.understood.columns.map(({ meaning, unit, unitFrom }) =>
    [meaning, unit, unitFrom].filter((part) => part !== null).join(' '),
  );
export const skips = (hours: PastedHours): string[] =>
  hours.skipped.map(({ line, reason }) => `${line} ${reason}`);
