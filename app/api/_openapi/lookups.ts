import type { SchemaName } from './schemas';

/** A question by GET: what it answers, and the parameters of its query. */
export type Lookup = {
  readonly operationId: string;
  readonly summary: string;
  readonly description: string;
  readonly answers: readonly SchemaName[];
  readonly parameters: readonly object[];
};

type Parameter = { readonly schema: object; readonly description: string; readonly required?: boolean };

const query = (name: string, { schema, description, required = false }: Parameter): object => ({
  name,
  in: 'query',
  required,
  description,
  schema,
});

const latitude = (required: boolean): object =>
  query('lat', {
    schema: { type: 'number', minimum: -90, maximum: 90 },
    description: 'Degrees, north is +.',
    required,
  });
const longitude = (required: boolean): object =>
  query('lon', {
    schema: { type: 'number', minimum: -180, maximum: 180 },
    description: 'Degrees, east is +.',
    required,
  });
const elevation = query('elevation', {
  schema: { type: 'number', minimum: -430, maximum: 6000 },
  description: "Of the site [m]; the service's own height for the place where left out.",
});
const moment = { type: 'string', format: 'date-time' };

export const LOOKUPS: Readonly<Record<string, Lookup>> = {
  '/api/forecast': {
    operationId: 'getForecast',
    summary: 'Hourly air at a place',
    description:
      'From the first weather service whose answer agrees with itself, moved to the elevation of the site. Hours that cannot be right are left out by name. Has an ETag; a fresh one may be held for a minute.',
    answers: ['Forecast'],
    parameters: [
      latitude(true),
      longitude(true),
      elevation,
      query('from', { schema: moment, description: 'First hour; the hour under way where left out.' }),
      query('hours', {
        schema: { type: 'integer', minimum: 1, maximum: 264, default: 48 },
        description: 'How many.',
      }),
    ],
  },
  '/api/places': {
    operationId: 'findPlaces',
    summary: 'Places by name, or the height of points',
    description: 'Send q, or lat and lon, or points.',
    answers: ['Places'],
    parameters: [
      query('q', { schema: { type: 'string', minLength: 2, maxLength: 200 }, description: 'A name.' }),
      latitude(false),
      longitude(false),
      query('points', {
        schema: { type: 'string' },
        description: 'Up to 100 pairs of degrees, such as 46.79,-92.1;46.8,-92.2; answered in their order.',
      }),
    ],
  },
  '/api/observations': {
    operationId: 'getObservations',
    summary: 'What weather stations around a place observed last',
    description:
      'Up to four stations within 80 km, in the United States only, nearest first, as observed at the station: neither moved to the height of the place nor used for any plan. Those that contradict themselves are left out by name. Send one on as a reading with its sd.',
    answers: ['Stations'],
    parameters: [latitude(true), longitude(true)],
  },
  '/api/history': {
    operationId: 'getHistory',
    summary: 'Past air: a season, or one moment',
    description: 'Send months for percentiles over past years, or at for the air at one past moment.',
    answers: ['History', 'PastAir'],
    parameters: [
      latitude(true),
      longitude(true),
      elevation,
      query('months', {
        schema: { type: 'string', examples: ['12,1,2'] },
        description: 'Months from 1 to 12.',
      }),
      query('years', {
        schema: { type: 'integer', minimum: 1, maximum: 5, default: 3 },
        description: 'How many years back.',
      }),
      query('hours', {
        schema: { type: 'string', default: '8-20' },
        description: 'Riding hours on the clock there.',
      }),
      query('at', { schema: moment, description: 'A past moment.' }),
    ],
  },
};
