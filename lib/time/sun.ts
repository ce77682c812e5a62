import { getTimes } from 'suncalc';
import { HOUR_MS, type Instant, instant } from './instant';

export type SunPlace = { readonly latitude: number; readonly longitude: number };

/**
 * dawn and dusk: the sun's centre 6° below the horizon (civil twilight). sunrise and sunset: its upper edge on the
 * horizon with standard refraction (centre at -0.833°).
 */
export type SunEventKind = 'dawn' | 'sunrise' | 'sunset' | 'dusk';
export type SunEvent = { readonly kind: SunEventKind; readonly at: Instant };

/** null: does not happen, because the sun stays up or down, or twilight lasts all night. */
export type SunTimes = {
  readonly sunset: Instant | null;
  readonly dusk: Instant | null;
  readonly dawn: Instant | null;
  readonly sunrise: Instant | null;
  /** 'up': the sun does not set on the evening's day; 'down': it does not rise. */
  readonly allDay: 'up' | 'down' | null;
};

const KINDS: readonly SunEventKind[] = ['dawn', 'sunrise', 'sunset', 'dusk'];
const DAY_MS = 24 * HOUR_MS;

const toInstant = (time: Date | null): Instant | null => (time === null ? null : instant(time.getTime()));
const dayOf = (at: number, place: SunPlace) => getTimes(new Date(at), place.latitude, place.longitude);

/** The night around an instant: from the solar noon before it to the solar noon after it. */
export function nightAround(at: Instant, place: SunPlace): SunTimes {
  const nearest = dayOf(at, place);
  const noon = nearest.solarNoon.getTime();
  const [evening, morning] =
    at >= noon ? [nearest, dayOf(noon + DAY_MS, place)] : [dayOf(noon - DAY_MS, place), nearest];
  return {
    sunset: toInstant(evening.sunset),
    dusk: toInstant(evening.dusk),
    dawn: toInstant(morning.dawn),
    sunrise: toInstant(morning.sunrise),
    allDay: evening.alwaysUp === true ? 'up' : evening.alwaysDown === true ? 'down' : null,
  };
}

/** Every dawn, sunrise, sunset and dusk from `from` to `to`, both included, in order. */
export function sunEvents(
  span: { readonly from: Instant; readonly to: Instant },
  place: SunPlace,
): readonly SunEvent[] {
  const events: SunEvent[] = [];
  // One day more on each side: an event belongs to the day of its solar noon, up to half a day away.
  for (let day = span.from - DAY_MS; day <= span.to + DAY_MS; day += DAY_MS) {
    const times = dayOf(day, place);
    for (const kind of KINDS) {
      const at = toInstant(times[kind]);
      if (at !== null && at >= span.from && at <= span.to) events.push({ kind, at });
    }
  }
  return events.sort((a, b) => a.at - b.at);
}
