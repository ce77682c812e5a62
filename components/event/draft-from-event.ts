import { onlyUnits } from '@/components/draft/only-units';
import type { EventJson, RunJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { MINUTE_MS } from '@/lib/time/instant';
import { addDays, fromLocal } from '@/lib/time/local';
import { localClock, localDate } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { elevationText, numberText } from '@/lib/units/entry-text';
import { metre } from '@/lib/units/quantity';
import type { EventDraft, RunDraft } from './event-draft';
import { placeRuns } from './place-runs';

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
    swapMinutes: '15',
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
  const rows = event.runs.map((run, i) => runDraft(run, { key: `run-${i}`, timezone, firstDate, shared }));
  return {
    ...blankEventDraft({ units, timezone, date: firstDate }),
    name: event.name,
    placeName: place?.name ?? '',
    latitude: place === undefined ? '' : numberText(place.latitude),
    longitude: place === undefined ? '' : numberText(place.longitude),
    elevation: elevationText(metre(event.elevationM), units),
    how: event.runs.length === 0 ? 'series' : 'list',
    runs: withoutPlainDays(rows, { date: firstDate, timezone }),
    typicalSeconds: shared === undefined ? '' : numberText(shared),
    swapMinutes: numberText(event.swapMinutes),
    ride: event.ride,
  };
}

type RunPlace = {
  readonly key: string;
  readonly timezone: string;
  readonly firstDate: string;
  /** The typical time of all runs, said once for the event. */
  readonly shared: number | undefined;
};

function runDraft(run: RunJson, { key, timezone, firstDate, shared }: RunPlace): RunDraft {
  const [start, end] = [instantFromJson(run.start), instantFromJson(run.end)];
  const [date, clock, endClock] = [
    localDate(start, timezone),
    localClock(start, timezone),
    localClock(end, timezone),
  ];
  const typed = fromLocal(date, clock, timezone);
  const doubled = typed.ok ? typed.value.doubled : null;
  const typedEnd = fromLocal(localDate(end, timezone), endClock, timezone);
  const plainEnd = typedEnd.ok && typedEnd.value.doubled === null && end - start < DAY_MS;
  return {
    key,
    name: run.name,
    day: String(daysBetween(firstDate, date)),
    start: clock,
    which: doubled === null ? '' : start >= doubled.later ? 'second' : 'first',
    end: plainEnd ? endClock : `${numberText((end - start) / MINUTE_MS)} min`,
    weight: run.weight,
    typicalSeconds:
      run.typicalSeconds === undefined || shared !== undefined ? '' : numberText(run.typicalSeconds),
  };
}

const DAY_MS = 24 * 60 * MINUTE_MS;

/** Rows whose day follows from the order of the clock times need not say it. */
function withoutPlainDays(
  rows: readonly RunDraft[],
  zoned: { readonly date: string; readonly timezone: string },
): readonly RunDraft[] {
  const plain = rows.map((row) => ({ ...row, day: '' }));
  const placed = placeRuns(plain, zoned);
  const same = rows.every((row, i) => {
    const run = placed[i];
    return run?.ok === true && String(run.value.day) === row.day;
  });
  return same ? plain : rows;
}

/** Most days a list of runs reaches; nobody races longer without a new event. */
const MOST_DAYS = 60;

function daysBetween(from: string, to: string): number {
  const days = Array.from({ length: MOST_DAYS }, (_, i) => addDays(from, i));
  return Math.max(0, days.indexOf(to));
}
