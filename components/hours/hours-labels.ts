import { instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { clockText } from '@/lib/words/times';
import type { HourRow } from './hours-draft';

const LABELS: Readonly<Record<string, string>> = {
  rows: 'Temperatures',
  elevation: 'Elevation of the track',
  pressureKind: 'Pressure',
  pressure: 'Pressure',
  humidity: 'Humidity for all hours',
};

const ROW_LABELS: Readonly<Record<string, string>> = {
  temperature: 'temperature',
  humidity: 'humidity',
  pressure: 'pressure',
};

/** "19:00"; which of the two where the clock shows it twice. */
export function rowClock(row: HourRow, zone: ClockZone): string {
  return clockText(instant(Date.parse(row.at)), { zone });
}

/** What a field is called in the list of complaints: "21:00, temperature". */
export function hoursLabel(name: string, rows: readonly HourRow[], zone: ClockZone): string {
  const match = /^rows\.(\d+)\.(\w+)$/.exec(name);
  const row = match === null ? undefined : rows[Number(match[1])];
  if (match === null || row === undefined) return LABELS[name] ?? name;
  return `${rowClock(row, zone)}, ${ROW_LABELS[match[2] ?? ''] ?? ''}`;
}
