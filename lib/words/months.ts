export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

export type Percentile = 'p10' | 'p50' | 'p90';

export const PERCENTILES: readonly { readonly value: Percentile; readonly label: string }[] = [
  { value: 'p10', label: 'Its cold hours' },
  { value: 'p50', label: 'Its middle' },
  { value: 'p90', label: 'Its mild hours' },
];
