import { type AnswerView, viewOf } from './answer-view';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
type Kind = AnswerView['kind'];
type Spoil = (view: AnswerView, now: number) => void;

const ALL: readonly Kind[] = ['open-meteo', 'met-norway', 'weather-gov'];
const GIVES_ISSUE: readonly Kind[] = ['met-norway', 'weather-gov'];
const GIVES_PRESSURE: readonly Kind[] = ['open-meteo', 'met-norway'];

const fahrenheit = (celsius: number): number => Math.round((celsius * 1.8 + 32) * 10) / 10;
const movedBy =
  (ms: number) =>
  (iso: string): string =>
    new Date(Date.parse(iso) + ms).toISOString();
/** Three hours from now: in the middle of any evening that is asked about. */
const isThatHour = (at: number, now: number): boolean => Math.floor(at / HOUR) === Math.floor(now / HOUR) + 3;

function everywhere(view: AnswerView, change: (value: number, at: number) => number): void {
  view.change('temperature', change);
  view.change('dewPoint', change);
}

/** Answers with status 200 and of the right shape that contradict themselves, with the services that can give them. */
const SPOILT = {
  'fahrenheit-called-celsius': { by: ALL, spoil: (view) => everywhere(view, fahrenheit) },
  'eighteen-degrees-off': {
    by: ALL,
    spoil: (view) => view.movePlace(([longitude, latitude]) => [longitude, latitude - 18]),
  },
  'week-old': {
    by: ALL,
    spoil: (view) => {
      view.moveTimes(-7 * DAY);
      view.moveIssue(movedBy(-7 * DAY));
    },
  },
  'station-is-sea-level': {
    by: ['open-meteo'],
    spoil: (view) => {
      view.exchange('station', 'sea');
      const sea = new Map<number, number>();
      view.change('station', (value, at) => {
        sea.set(at, value);
        return value;
      });
      view.change('sea', (value, at) => sea.get(at) ?? value);
    },
  },
  'one-hour-45': {
    by: ALL,
    spoil: (view, now) => view.change('temperature', (value, at) => (isThatHour(at, now) ? 45 : value)),
  },
  'humidity-a-fraction': {
    by: ALL,
    spoil: (view) => view.change('humidity', (percent) => percent / 100),
  },
  'height-3000': { by: ALL, spoil: (view) => view.setElevation(3000) },
  'all-zeros': {
    by: ALL,
    spoil: (view) => {
      for (const quantity of ['temperature', 'dewPoint', 'humidity', 'station', 'sea'] as const)
        view.change(quantity, () => 0);
    },
  },
  'flat-line': { by: ALL, spoil: (view) => view.change('temperature', () => -11.3) },
  'twelve-hours-ahead': { by: ALL, spoil: (view) => view.moveTimes(12 * HOUR) },
  'twelve-hours-behind': { by: ALL, spoil: (view) => view.moveTimes(-12 * HOUR) },
  'issued-in-2024': { by: GIVES_ISSUE, spoil: (view) => view.moveIssue(() => '2024-01-16T21:00:00Z') },
  'overlapping-intervals': { by: ['weather-gov'], spoil: () => undefined },
  'issued-tomorrow': { by: GIVES_ISSUE, spoil: (view) => view.moveIssue(movedBy(DAY)) },
  'mirrored-longitude': {
    by: ALL,
    spoil: (view) => view.movePlace(([longitude, latitude]) => [-longitude, latitude]),
  },
  'latitude-and-longitude-swapped': {
    by: ALL,
    spoil: (view) => view.movePlace(([longitude, latitude]) => [latitude, longitude]),
  },
  'dew-point-and-temperature-swapped': {
    by: ALL,
    spoil: (view) => view.exchange('temperature', 'dewPoint'),
  },
  'pressures-swapped': { by: ['open-meteo'], spoil: (view) => view.exchange('station', 'sea') },
  'one-hour-low-pressure': {
    by: GIVES_PRESSURE,
    spoil: (view, now) => {
      view.change('station', (value, at) => (isThatHour(at, now) ? value - 60 : value));
      view.change('sea', (value, at) => (isThatHour(at, now) ? value - 60 : value));
    },
  },
  'two-places-in-turns': {
    by: ALL,
    spoil: (view) => everywhere(view, (value, at) => (Math.round(at / HOUR) % 2 === 0 ? value + 25 : value)),
  },
  'another-place-from-midnight': {
    by: ALL,
    spoil: (view, now) => everywhere(view, (value, at) => (at > now + 4 * HOUR ? value + 40 : value)),
  },
  'begins-tomorrow': { by: ALL, spoil: (view, now) => view.moveTimes(now + 30 * HOUR - view.firstHour()) },
  'kelvin-called-celsius': { by: ALL, spoil: (view) => everywhere(view, (value) => value + 273.15) },
  'temperature-from-elsewhere': {
    by: ['open-meteo', 'weather-gov'],
    spoil: (view) => view.change('temperature', (value) => value + 12),
  },
  'one-hour-of-another-day': {
    by: ALL,
    spoil: (view, now) =>
      view.change('temperature', (value, at) => (isThatHour(at, now) ? value + 12 : value)),
  },
} as const satisfies Readonly<Record<string, { readonly by: readonly Kind[]; readonly spoil: Spoil }>>;

export type SpoiltAnswer = keyof typeof SPOILT;
// The keys of a constant object.
export const SPOILT_ANSWERS = Object.keys(SPOILT) as SpoiltAnswer[];

/** The services that can give such an answer. */
export function givers(name: SpoiltAnswer): readonly Kind[] {
  return SPOILT[name].by;
}

/** A good answer made to contradict itself; as it is where the service cannot. */
export function spoilt(name: SpoiltAnswer, body: string, now: number): string {
  const view = viewOf(body);
  const spoil: { readonly by: readonly Kind[]; readonly spoil: Spoil } = SPOILT[name];
  if (view === null || !spoil.by.includes(view.kind)) return body;
  if (name === 'overlapping-intervals') return overlapping(body, now);
  spoil.spoil(view, now);
  return view.text();
}

/** The next three hours once more, as one run at the end of the layer and 8 K warmer. */
function overlapping(body: string, now: number): string {
  // The fake's own grid.
  const grid = JSON.parse(body);
  const { values } = grid.properties.temperature;
  const from = Math.ceil(now / HOUR) * HOUR + HOUR;
  const start = new Date(from).toISOString().replace('.000Z', '+00:00');
  values.push({ validTime: `${start}/PT3H`, value: values[0].value + 8 });
  return JSON.stringify(grid);
}
