import { readCoordinatePair } from '@/lib/fields/coordinate';
import { type DraftOf, type FieldTable, groupOf, type ValuesOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import { blankOf } from '@/lib/fields/table-values';
import { PERCENTILES } from '@/lib/words/months';

/** Nothing of the page is kept as a record: what is typed stays a draft. */
const f = fieldRowsFor<Record<never, never>>();

const HEIGHTS = {
  least: -430,
  most: 6000,
  words: 'Outside the elevations of roads and trails. Check the number and its unit.',
};
const OUTSIDE = 'Outside what any road or trail has. Check the number and its unit.';
const MINUTES = { least: 0, most: 600, words: 'Minutes from 0 to 600.' };

const height = (label: string) => f.elevation({ label, example: '900', within: HEIGHTS });
const minutes = (label: string) =>
  f.number({ label, optional: true, unit: 'min', example: '20', within: MINUTES });

/** A map gives both coordinates at once. */
const both = (text: string) => readCoordinatePair(text) ?? {};

/** One condition; what stood in past winters brings its own pressure and humidity. */
export const CONDITION = groupOf({
  name: f.text({ label: 'Day', maxLength: 40 }),
  temperature: f.temperature({ label: 'Temperature', example: '-12.5' }),
  /** Station pressure of past winters [hPa]; empty: the standard atmosphere at the place. */
  stationHpa: f.kept<string>(''),
  /** Percent, of past winters; empty: assumed. */
  humidity: f.kept<string>(''),
});

export const RIDE_PLACE = groupOf({
  name: f.text({ label: 'Place', maxLength: 40 }),
  clock: f.text({ label: 'Gets there', clock: '10:30', autoComplete: 'off' }),
  stop: minutes('Stays'),
  elevation: height('Elevation'),
});

export const RIDE_HOUR = groupOf({
  clock: f.text({ label: 'Time', clock: '07:00', autoComplete: 'off' }),
  temperature: f.temperature({ label: 'Temperature', example: '-12' }),
});

const RIDE = groupOf(
  {
    way: f.choice({
      label: 'The ride',
      blank: 'typed',
      options: [
        { value: 'typed', label: 'Places and times' },
        { value: 'track', label: 'A GPX track' },
      ],
    }),
    date: f.text({ label: 'Date', type: 'date' }),
    timezone: f.text({ label: 'Time zone' }),
    /** A profile as JSON; empty where no file was read. */
    track: f.kept<string>(''),
    untimed: f.kept<string>(''),
    /** The zone of the track's start; empty where it is not known. */
    trackZone: f.kept<string>(''),
    startClock: f.text({ label: 'Starts at', clock: '08:00', autoComplete: 'off' }),
    speed: f.way({ label: 'Average speed, stops included', optional: true, example: '30' }),
    heightStart: height('Elevation of the start'),
    heightMiddle: height('Half way along'),
    heightEnd: height('Of the end'),
    air: f.choice({
      label: 'Temperatures',
      blank: 'typed',
      options: [
        { value: 'typed', label: 'Typed temperatures' },
        { value: 'forecast', label: 'Forecast' },
        { value: 'past', label: 'Past winters' },
      ],
    }),
    pastHours: f.choice({
      label: 'Set up for',
      blank: 'p10',
      options: PERCENTILES,
      hint: 'The cold hours are the ones that must not be lean.',
    }),
    hoursElevation: { ...height('They are for an elevation of'), signed: true },
    latitude: f.text({
      label: 'Latitude of the start',
      hint: 'Such as 47.42, or both at once as a map gives them.',
      signed: true,
      inputMode: 'text',
    }),
    longitude: f.text({
      label: 'Longitude of the start',
      hint: 'Such as −93.61 or 93.61 W.',
      signed: true,
      inputMode: 'text',
    }),
    fall: f.fall({ label: 'Colder with height', example: '6.5' }),
    swapMinutes: minutes('A swap of mains in the snow takes'),
    fuel: f.choice({
      label: 'Fuel at the baseline',
      blank: 'per-hour',
      options: [
        { value: 'per-hour', label: 'By the hour' },
        { value: 'per-distance', label: 'By the distance' },
      ],
      hint: 'What it drank when the baseline was proven, ridden as you ride.',
    }),
    fuelUse: f.fuel({ label: 'Fuel', optional: true, example: '9' }),
    /** Of a typed ride. */
    distance: f.way({ label: 'Length of the ride', optional: true, example: '80' }),
  },
  {
    asked: {
      pastHours: ({ air }) => air === 'past',
      distance: ({ fuel, way }) => fuel === 'per-distance' && way === 'typed',
    },
    sets: { latitude: both, longitude: both },
  },
);

const warmth = (label: string) =>
  f.temperature({ label, example: '-40', within: { least: -70, most: 60, words: OUTSIDE } });
const column = (label: string) =>
  f.elevation({ label, signed: true, example: '3000', within: { ...HEIGHTS, words: OUTSIDE } });

const CARD = groupOf({
  warmest: warmth('Warmest line'),
  coldest: warmth('Coldest line'),
  step: f.step({ label: 'A line every', signed: false, example: '10' }),
  lowest: column('Lowest column'),
  highest: column('Highest column'),
  rise: f.elevation({ label: 'A column every', example: '500' }),
  shows: f.choice({
    label: 'In each cell',
    blank: 'main',
    options: [
      { value: 'main', label: 'Main' },
      { value: 'main-screw', label: 'Main and screw' },
      { value: 'main-screw-clip', label: 'Main, screw and clip' },
    ],
  }),
});

export const TRAIL = {
  top: groupOf({
    /** Empty stands for none. */
    machineId: f.kept<string>(''),
    elevation: f.elevation({
      label: 'Elevation of the place',
      hint: 'Thin air asks for less of everything. The standard pressure of this height stands in.',
      signed: true,
      example: '900',
    }),
  }),
  ride: RIDE,
  card: CARD,
} satisfies FieldTable;

export type ConditionDraft = ValuesOf<typeof CONDITION.rows>;
export type TrailPlaceDraft = ValuesOf<typeof RIDE_PLACE.rows>;
export type HourDraft = ValuesOf<typeof RIDE_HOUR.rows>;

export type RideDraft = ValuesOf<typeof RIDE.rows> & {
  readonly places: readonly TrailPlaceDraft[];
  readonly hours: readonly HourDraft[];
};
export type CardDraft = ValuesOf<typeof CARD.rows>;

export type TrailDraft = DraftOf<typeof TRAIL> & {
  readonly conditions: readonly ConditionDraft[];
  readonly ride: RideDraft;
};

export const NEW_CONDITION: ConditionDraft = blankOf(CONDITION);
export const NEW_PLACE: TrailPlaceDraft = blankOf(RIDE_PLACE);
export const NEW_HOUR: HourDraft = blankOf(RIDE_HOUR);
