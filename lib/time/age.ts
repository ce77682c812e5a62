import { type Instant, MINUTE_MS } from './instant';

/** Whole minutes from `from` to `to`; negative where `to` is earlier. */
export function minutesBetween(from: Instant, to: Instant): number {
  return Math.trunc((to - from) / MINUTE_MS);
}

/** How long ago, or how long until, in parts a sentence can use. All parts are 0 or more. */
export type Span = {
  readonly direction: 'past' | 'now' | 'ahead';
  readonly days: number;
  readonly hours: number;
  readonly minutes: number;
};

/** The way from `now` to `at` in days, hours and whole minutes; less than a minute is now. */
export function spanFrom(now: Instant, at: Instant): Span {
  const total = minutesBetween(now, at);
  const size = Math.abs(total);
  return {
    direction: total === 0 ? 'now' : total < 0 ? 'past' : 'ahead',
    days: Math.floor(size / 1440),
    hours: Math.floor((size % 1440) / 60),
    minutes: size % 60,
  };
}
