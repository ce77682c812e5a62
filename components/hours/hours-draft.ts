import type { PressureKind } from '@/lib/air/air';
import type { UnitChoice } from '@/lib/units/choice';

/** One hour as typed. Where the temperature is empty, the curve between its typed neighbours stands in. */
export type HourRow = {
  /** ISO 8601, UTC. */
  readonly at: string;
  readonly temperature: string;
  readonly humidity: string;
  readonly pressure: string;
};

/** Text fields keep what was typed, also where it is no number yet. */
export type HoursDraft = {
  /** What bare numbers in this draft mean. */
  readonly units: UnitChoice;
  /** In order of time, no time twice. */
  readonly rows: readonly HourRow[];
  readonly elevation: string;
  readonly pressureKind: PressureKind;
  /** For every hour that has no pressure of its own. */
  readonly pressure: string;
  /** What was stood by of the pressures (`hours-pressure-key.ts`); empty where nothing was. */
  readonly pressureConfirmed: string;
  readonly humidity: string;
  readonly humidityByHour: boolean;
  readonly pressureByHour: boolean;
  readonly pasted: string;
  /** A time between the hours, before it is added as a row. */
  readonly addedClock: string;
};

export function emptyRow(at: string): HourRow {
  return { at, temperature: '', humidity: '', pressure: '' };
}

const timeOf = (row: HourRow): number => Date.parse(row.at);

/** The rows with others added; a row of the same moment is replaced by the later one of the two lists. */
export function withRows(rows: readonly HourRow[], added: readonly HourRow[]): readonly HourRow[] {
  const byTime = new Map([...rows, ...added].map((row) => [timeOf(row), row]));
  return [...byTime.values()].sort((a, b) => timeOf(a) - timeOf(b));
}

/** The rows with empty ones for moments that have none yet. */
export function withMoments(rows: readonly HourRow[], moments: readonly string[]): readonly HourRow[] {
  return withRows(moments.map(emptyRow), rows);
}

export function isBlank(row: HourRow): boolean {
  return [row.temperature, row.humidity, row.pressure].every((text) => text.trim() === '');
}
