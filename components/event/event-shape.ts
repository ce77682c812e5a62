import { METRIC_UNITS } from '@/lib/units/choice';
import { blankEventDraft } from './draft-from-event';
import { type EventDraft, emptyRun } from './event-draft';

/** The shape of an event's draft: one kept by an older version of the app does not have it and is left aside. */
export const EVENT_SHAPE: EventDraft = {
  ...blankEventDraft({ units: METRIC_UNITS, timezone: 'UTC', date: '2027-01-16' }),
  runs: [emptyRun('new-1', '')],
};
