import { MOST_FEED_CHARACTERS } from '@/lib/share/addresses';

/** A shared night by GET, made anew each time it is asked for. */
export type LiveText = {
  readonly operationId: string;
  readonly summary: string;
  readonly description: string;
  readonly type: string;
};

export const LIVE_PARAMETERS: readonly object[] = [
  {
    name: 'd',
    in: 'query',
    required: true,
    description: 'What a shared link carries behind its #: the night, its machines and the accepted plan.',
    schema: { type: 'string', maxLength: MOST_FEED_CHARACTERS },
  },
  {
    name: 'units',
    in: 'query',
    required: false,
    description: 'Of the temperatures that are told.',
    schema: { type: 'string', enum: ['metric', 'us'], default: 'metric' },
  },
];

export const LIVE_TEXTS: Readonly<Record<string, LiveText>> = {
  '/api/plan.ics': {
    operationId: 'getCalendar',
    summary: 'A calendar that follows the forecast',
    description:
      'To be subscribed to. Planned anew with the newest forecast at every poll; an entry keeps its UID, its SEQUENCE never falls, and what is past stays as it was accepted. Where no service answers, the last good forecast, the hours in the link or the accepted plan stand in, and the entries say so.',
    type: 'text/calendar',
  },
  '/api/plan.csv': {
    operationId: 'getTable',
    summary: 'The runs as a table that follows the forecast',
    description: 'For spreadsheets that read a table from an address. A row for each machine and run.',
    type: 'text/csv',
  },
};
