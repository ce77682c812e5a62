import type { EventJson } from '@/lib/contract/event';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { blankDraft, draftFrom } from '@/lib/fields/table-values';
import { type HourStyle, localDate } from '@/lib/time/zone';
import { METRIC_UNITS, type UnitChoice } from '@/lib/units/choice';
import { numberText } from '@/lib/units/entry-text';
import { EVENT, type EventDraft, emptyRun } from './event-rows';
import { runRows } from './run-rows';

/** What a new event starts from: where the device thinks it is. */
export type EventStart = { readonly units: UnitChoice; readonly timezone: string; readonly date: string };

export function blankEventDraft({ units, timezone, date }: EventStart): EventDraft {
  return { ...blankDraft(EVENT, units), timezone, date, runs: [] };
}

/** The shape of an event's draft: one kept by an older version of the app does not have it and is left aside. */
export const EVENT_SHAPE: EventDraft = {
  ...blankEventDraft({ units: METRIC_UNITS, timezone: 'UTC', date: '2027-01-16' }),
  runs: [emptyRun('new-1', '')],
};

type EventReader = Omit<EventStart, 'timezone'> & { readonly hours: HourStyle };

/** The draft that reads back as `event`, its times on the person's clock; `date` stands in where it has no runs. */
export function draftFromEvent(event: EventJson, { units, date, hours }: EventReader): EventDraft {
  const { timezone } = event;
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
    ...draftFrom(EVENT, event, units),
    date: firstDate,
    how: event.runs.length === 0 ? 'series' : 'list',
    runs: runRows(rows, { date: firstDate, timezone, hours }),
    typicalSeconds: shared === undefined ? '' : numberText(shared),
  };
}
