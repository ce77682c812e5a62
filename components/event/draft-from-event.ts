import { onlyUnits } from '@/components/draft/only-units';
import type { EventJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import { localDate } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { elevationText, numberText } from '@/lib/units/entry-text';
import { metre } from '@/lib/units/quantity';
import type { EventDraft } from './event-draft';
import { runRows } from './run-rows';

/** What a new event starts from: where the device thinks it is. */
export type EventStart = { readonly units: UnitChoice; readonly timezone: string; readonly date: string };

export function blankEventDraft({ units, timezone, date }: EventStart): EventDraft {
  return {
    units: onlyUnits(units),
    name: '',
    placeName: '',
    latitude: '',
    longitude: '',
    elevation: '',
    timezone,
    date,
    how: 'series',
    series: { first: '', every: '', count: '', lasting: '', called: 'Round' },
    runs: [],
    typicalSeconds: '',
    swapMinutes: numberText(DEFAULT_OPTIONS.swapMinutes),
    ride: false,
  };
}

/** The draft that reads back as `event`; `date` stands in where it has no runs. */
export function draftFromEvent(event: EventJson, { units, date }: Omit<EventStart, 'timezone'>): EventDraft {
  const { timezone, place } = event;
  const first = Math.min(...event.runs.map((run) => instantFromJson(run.start)));
  const firstRun = event.runs.find((run) => instantFromJson(run.start) === first);
  const firstDate = firstRun === undefined ? date : localDate(instantFromJson(firstRun.start), timezone);
  const typical = [...new Set(event.runs.map((run) => run.typicalSeconds))];
  const shared = typical.length === 1 ? typical[0] : undefined;
  const rows = event.runs.map((run, i) => ({
    key: `run-${i}`,
    name: run.name,
    start: instantFromJson(run.start),
    end: instantFromJson(run.end),
    weight: run.weight,
    typicalSeconds:
      run.typicalSeconds === undefined || shared !== undefined ? '' : numberText(run.typicalSeconds),
  }));
  return {
    ...blankEventDraft({ units, timezone, date: firstDate }),
    name: event.name,
    placeName: place?.name ?? '',
    latitude: place === undefined ? '' : numberText(place.latitude),
    longitude: place === undefined ? '' : numberText(place.longitude),
    elevation: elevationText(metre(event.elevationM), units),
    how: event.runs.length === 0 ? 'series' : 'list',
    runs: runRows(rows, { date: firstDate, timezone }),
    typicalSeconds: shared === undefined ? '' : numberText(shared),
    swapMinutes: numberText(event.swapMinutes),
    ride: event.ride,
  };
}
