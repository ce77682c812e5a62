import { instantFromJson } from '@/lib/contract/event-from-json';
import { machineInForce } from '@/lib/store/machine-in-force';
import type { EventRecord, MachineRecord } from '@/lib/store/records';
import { type ClockZone, localClock } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { formatElevation, formatPressure, formatTemperature } from '@/lib/units/format';
import { metre } from '@/lib/units/quantity';
import { counted } from '@/lib/words/listing';
import { PRESSURE_NAMES } from '@/lib/words/pressure-kinds';
import { jetsText } from '@/lib/words/settings';

/** "Lake Orvana, 1,319 ft, America/Chicago. 8 runs from 19:00 to 00:30; a swap takes 15 min." */
export function eventSummary({ event }: EventRecord, units: UnitChoice, clock: ClockZone): string {
  const { place, elevationM, timezone, runs, swapMinutes, ride } = event;
  const where = [place?.name, formatElevation(metre(elevationM), units), timezone].filter(Boolean).join(', ');
  const span = clockSpan(
    runs.flatMap(({ start, end }) => [start, end]),
    clock,
  );
  const when = span === null ? 'No runs yet' : `${counted(runs.length, 'run')} ${span}`;
  return `${where}. ${when}${ride ? '; a ride, one setting' : `; a swap takes ${swapMinutes} min`}.`;
}

/** "12 typed, from 12:00 to 07:00. Station pressure 28.59 inHg." */
export function hoursSummary({ typed }: EventRecord, units: UnitChoice, clock: ClockZone): string {
  const span = clockSpan(typed?.hours.map(({ time }) => time) ?? [], clock);
  if (typed === null || span === null) return 'None typed yet.';
  return `${typed.hours.length} typed, ${span}. ${pressureText(typed.pressure, units)}`;
}

function pressureText(pressure: NonNullable<EventRecord['typed']>['pressure'], units: UnitChoice): string {
  if (pressure.kind === 'standard') return 'Pressure: standard atmosphere at the elevation, an estimate.';
  return `${PRESSURE_NAMES[pressure.kind]} ${formatPressure(hectopascalToPascal(pressure.hpa), units)}.`;
}

/** "Ilsa Vorn's triple. Baseline 410/400/410, proven at 13 °F. 9 sizes in the box." */
export function machineSummary(record: MachineRecord, units: UnitChoice): string {
  const { name, carburettors, baseline, box } = machineInForce(record, null);
  const jets = jetsText(carburettors.map(({ main }) => main));
  const at = formatTemperature(celsiusToKelvin(baseline.air.temperatureC), units);
  return `${name}. Baseline ${jets}, proven at ${at}. ${counted(box.length, 'size')} in the box.`;
}

/** "from 19:00 to 00:30" over all given times; null where there are none. */
function clockSpan(times: readonly string[], clock: ClockZone): string | null {
  const instants = times.map(instantFromJson).sort((a, b) => a - b);
  const [first, last] = [instants[0], instants.at(-1)];
  if (first === undefined || last === undefined) return null;
  return `from ${localClock(first, clock)} to ${localClock(last, clock)}`;
}
