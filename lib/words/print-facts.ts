import type { EventJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { hoursProvenance } from '@/lib/hours/provenance';
import type { HourSeries } from '@/lib/hours/series';
import type { ClubRecords } from '@/lib/night/club';
import { classOf, racerName } from '@/lib/store/racer-event';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { zoneName } from '@/lib/time/zone';
import { dayText } from '@/lib/words/day-text';
import { isolated } from '@/lib/words/isolated';
import { hoursSentenceOnPaper } from '@/lib/words/provenance';
import { dateClockText } from '@/lib/words/times';

/** "Night drags · Sat 16 Jan 2027". */
export function eventLine({ name, timezone, runs }: EventJson): string {
  const first = runs[0];
  return first === undefined
    ? name
    : `${isolated(name)} · ${dayText(instantFromJson(first.start), timezone)}`;
}

/** The sled, where the racer is not called by it, and the class, where there is one. */
export function racerFacts({ event, machines }: ClubRecords, id: string): readonly string[] {
  const machine = machines.find((each) => each.id === id)?.value;
  const sled = machine?.machine.name ?? '';
  const own = machine !== undefined && racerName(event.value, id, machine) === sled;
  return [own ? '' : isolated(sled), classOf(event.value, id)?.name ?? ''].filter((fact) => fact !== '');
}

/** Paper does not follow the forecast, so it says how old it is. */
export function madeLine(now: Instant, zone: ClockZone): string {
  return `As planned at ${dateClockText(now, zone)} (${zoneName(zone)}). Paper does not follow the forecast: look again before each swap.`;
}

/** Whose hours the plan rests on. */
export function hoursLine(series: HourSeries, zone: ClockZone): string {
  const sentence = hoursSentenceOnPaper(hoursProvenance(series), { zone });
  const { attribution } = series.source;
  return attribution === '' ? sentence : `${sentence} ${attribution}`;
}
