import { chartCellId } from '@/lib/store/evidence';
import type { LogRecord, MachineRecord, Stored } from '@/lib/store/records';
import type { HourStyle } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { formatElevation, formatTemperature } from '@/lib/units/format';
import { metre } from '@/lib/units/quantity';
import { loggedRunText } from './log';

/** What each entry is called: a run by its name and time, a cell of the chart by its air and jet. */
export function entryNames(
  record: MachineRecord,
  log: readonly Stored<LogRecord>[],
  { units, hours }: { readonly units: UnitChoice; readonly hours: HourStyle },
): ReadonlyMap<string, string> {
  const cells = record.chart.map(({ temperatureC, elevationM, main }, i): [string, string] => [
    chartCellId(i),
    `Chart ${formatTemperature(celsiusToKelvin(temperatureC), units)}, ${formatElevation(metre(elevationM), units)}: ${main}`,
  ]);
  return new Map([
    ...cells,
    ...log.map(({ id, value }): [string, string] => [id, loggedRunText(value, hours)]),
  ]);
}
