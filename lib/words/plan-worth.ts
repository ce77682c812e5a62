/** What a way of jetting did, over one count of nights: lean runs in percent, swaps a night. */
type Measured = { readonly leanRuns: string; readonly swaps: string };

export type WayWorth = {
  readonly way: string;
  /** `npm run hindcast 2000`, as printed for the truth as stated. */
  readonly here: Measured;
  /** Another count on 1,147 nights, by other code than this; null where it knew no such way. */
  readonly elsewhere: Measured | null;
};

export const HINDCAST_NIGHTS = '2,000';
export const OTHER_NIGHTS = '1,147';

/** Measured, not worked out: to be measured again whenever the planner or its error model changes. */
export const WAYS_WORTH: readonly WayWorth[] = [
  {
    way: 'Keep the baseline',
    here: { leanRuns: '29.2', swaps: '0' },
    elsewhere: { leanRuns: '25', swaps: '0' },
  },
  {
    way: 'React once it runs 3 % lean',
    here: { leanRuns: '17.5', swaps: '0.23' },
    elsewhere: { leanRuns: '15', swaps: '0.21' },
  },
  {
    way: 'One size richer all night',
    here: { leanRuns: '3.0', swaps: '1' },
    elsewhere: { leanRuns: '5.4', swaps: '1' },
  },
  {
    way: 'Thermometer and this law, nearest jet',
    here: { leanRuns: '1.9', swaps: '0.81' },
    elsewhere: { leanRuns: '2.0', swaps: '1.06' },
  },
  {
    way: 'The same, next richer jet',
    here: { leanRuns: '0.00', swaps: '0.99' },
    elsewhere: { leanRuns: '0.1', swaps: '0.87 to 1.15' },
  },
  {
    way: 'The plan',
    here: { leanRuns: '0.12', swaps: '0.77' },
    elsewhere: { leanRuns: '0.4', swaps: '0.69' },
  },
  { way: 'The plan, a reading before each run', here: { leanRuns: '0.02', swaps: '0.59' }, elsewhere: null },
  { way: 'The same, swaps for safety alone', here: { leanRuns: '0.02', swaps: '0.55' }, elsewhere: null },
  { way: 'Perfect knowledge', here: { leanRuns: '0.00', swaps: '0.48' }, elsewhere: null },
];
