import type { PressureKind } from '@/lib/air/air';
import { airFromJson } from '@/lib/contract/air-from-json';
import type { EventJson, HourJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { pressureJson, pressureSaid } from '@/lib/contract/pressure';
import { blankDraft, draftFrom, valuesFrom } from '@/lib/fields/table-values';
import type { TypedHours } from '@/lib/store/records';
import { addMinutes, type Instant, instant } from '@/lib/time/instant';
import { hourTicks, isoUtc } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { elevationText, pressureText } from '@/lib/units/entry-text';
import { metre } from '@/lib/units/quantity';
import { ENOUGH_MINUTES } from '@/lib/words/delay';
import { type HourRow, type HoursDraft, withMoments } from './hours-draft';
import { hoursPressureKey } from './hours-pressure-key';
import { HOUR, HOURS } from './hours-rows';
import { humidityAtDewPoint } from './humidity-text';

/** What the hours belong to: where and when the runs are. */
export type HoursEvent = Pick<EventJson, 'timezone' | 'elevationM' | 'runs'>;

type HoursStart = { readonly event: HoursEvent; readonly units: UnitChoice; readonly now: Instant };

/** Hours shown where there are no runs yet. */
const HOURS_AHEAD = 12;
/** Most rows a form opens with; a longer ride is typed at its points. */
const MOST_ROWS = 72;

/** Full hours from before the first run to two hours after the last: nights run late. */
export function hoursOfEvent({ runs, timezone }: HoursEvent, now: Instant): readonly string[] {
  const starts = runs.map((run) => instantFromJson(run.start));
  const ends = runs.map((run) => instantFromJson(run.end));
  const first = starts.length === 0 ? now : addMinutes(instant(Math.min(...starts)), -60);
  const last =
    ends.length === 0
      ? addMinutes(now, HOURS_AHEAD * 60)
      : addMinutes(instant(Math.max(...ends)), ENOUGH_MINUTES + 59);
  return hourTicks({ from: first, to: last }, timezone).slice(0, MOST_ROWS).map(isoUtc);
}

export function blankHoursDraft({ event, units, now }: HoursStart): HoursDraft {
  return {
    ...blankDraft(HOURS, units),
    rows: withMoments([], hoursOfEvent(event, now)),
    elevation: elevationText(metre(event.elevationM), units),
  };
}

/** The draft that reads back as `typed`, with empty rows for the hours of the event that nobody typed. */
export function draftFromHours(typed: TypedHours, { event, units, now }: HoursStart): HoursDraft {
  const kind = pressureKindOf(typed);
  const rows = typed.hours.map((hour) => hourRow(hour, { kind, units, event, typed }));
  const once = draftFrom(HOURS, { ...typed, elevationM: event.elevationM }, units);
  const draft: HoursDraft = {
    ...once,
    rows: withMoments(rows, hoursOfEvent(event, now)),
    pressureKind: kind,
    pressure: typed.pressure.kind === kind ? once.pressure : '',
    pressureConfirmed: '',
    humidityByHour: rows.some((row) => row.humidity !== ''),
    pressureByHour: rows.some((row) => row.pressure !== ''),
  };
  const confirmed =
    typed.pressureConfirmed === true || typed.hours.some((hour) => hour.pressureConfirmed === true);
  return confirmed ? { ...draft, pressureConfirmed: hoursPressureKey(draft) } : draft;
}

const pressureIn = (hpa: number, units: UnitChoice): string => pressureText(hectopascalToPascal(hpa), units);

/** The kind that all pressures are of; station pressure where they differ, for all can be said in it. */
function pressureKindOf({ hours, pressure }: TypedHours): PressureKind {
  const kinds = new Set<PressureKind>(hours.flatMap((hour) => pressureSaid(hour)?.kind ?? []));
  if (pressure.kind !== 'standard') kinds.add(pressure.kind);
  const [kind = 'standard'] = kinds;
  return kinds.size > 1 ? 'station' : kind;
}

type RowPlace = {
  readonly kind: PressureKind;
  readonly units: UnitChoice;
  readonly event: HoursEvent;
  readonly typed: TypedHours;
};

function hourRow(hour: HourJson, place: RowPlace): HourRow {
  const values = valuesFrom(HOUR, hour, place.units);
  return {
    ...values,
    at: isoUtc(instantFromJson(hour.time)),
    humidity:
      values.humidity === '' && hour.dewPointC !== undefined
        ? humidityAtDewPoint(celsiusToKelvin(hour.dewPointC), celsiusToKelvin(hour.temperatureC))
        : values.humidity,
    pressure: pressureOfRow(hour, place),
  };
}

function pressureOfRow(hour: HourJson, { kind, units, event, typed }: RowPlace): string {
  const own = pressureSaid(hour);
  if (own?.kind === kind) return pressureIn(own.hpa, units);
  const once = typed.pressure;
  if (own === null && (once.kind === kind || once.kind === 'standard')) return '';
  const said = own === null && once.kind !== 'standard' ? pressureJson(once) : {};
  const air = airFromJson({ ...hour, ...said, elevationM: event.elevationM });
  return air.ok ? pressureText(air.value.pressure, units) : '';
}
