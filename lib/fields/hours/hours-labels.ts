import { fieldLabel } from '@/lib/fields/table-values';
import type { ClockZone } from '@/lib/time/zone';
import { clockText } from '@/lib/words/times';
import { type HourRow, rowTime } from './hours-draft';
import { HOUR, HOURS } from './hours-rows';

/** "19:00"; which of the two where the clock shows it twice. */
export function rowClock(row: HourRow, zone: ClockZone): string {
  return clockText(rowTime(row), { zone });
}

/** What a field is called in the list of complaints: "21:00, temperature". */
export function hoursLabel(name: string, rows: readonly HourRow[], zone: ClockZone): string {
  const match = /^rows\.(\d+)\.(\w+)$/.exec(name);
  const row = match === null ? undefined : rows[Number(match[1])];
  if (name === 'rows') return 'Temperatures';
  if (match === null || row === undefined) return fieldLabel(HOURS, name);
  return `${rowClock(row, zone)}, ${fieldLabel({ top: HOUR }, match[2] ?? '').toLowerCase()}`;
}
