import { type Lapse, USUAL_LAPSE } from '@/lib/hours/elevation-shift';
import type { HourSeries } from '@/lib/hours/series';
import { addMinutes, type Instant, instant } from '@/lib/time/instant';
import { pointsBetween, type Ride, type RideStop } from '@/lib/trail/ride';
import type { RideRequest } from '@/lib/trail/ride-plan';
import { hectopascalToPascal } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';
import { hour } from './plan-cases';
import { trailMachine } from './trail-machine';

/** An invented Saturday, 06:00 UTC. */
export const MORNING: Instant = instant(Date.UTC(2027, 0, 16, 6));

type Place = readonly [name: string, minutes: number, elevation: number, stop?: number];

/** A ride through places: minutes after 06:00, height in metres, minutes stood there. */
export function rideOf(...places: readonly Place[]): Ride {
  const stops = places.map(([name, minutes, elevation, stop = 0]): RideStop => {
    const arrive = addMinutes(MORNING, minutes);
    return { name, elevation: metre(elevation), arrive, leave: addMinutes(arrive, stop) };
  });
  return { stops, points: pointsBetween(stops), distance: null };
}

/** From the valley over the pass to a hut and back at dusk. */
export const VALLEY_PASS_AND_BACK = rideOf(
  ['Valley', 120, 320],
  ['Pass', 270, 1450, 20],
  ['Hut', 390, 900, 45],
  ['Pass again', 540, 1450],
  ['Valley', 660, 320],
);

/** Hourly from 06:00 at the valley's 320 m, one temperature in °C for each hour. */
export function valleyHours(celsius: readonly number[]): HourSeries {
  return {
    hours: celsius.map((t, i) =>
      hour(addMinutes(MORNING, i * 60), t, { pressure: hectopascalToPascal(975) }),
    ),
    elevation: metre(320),
    source: {
      name: 'invented',
      attribution: '',
      attributionUrl: null,
      issuedAt: MORNING,
      fetchedAt: MORNING,
      modelElevation: null,
    },
  };
}

/** -16 °C at dawn, -6 °C after noon, -12 °C at dusk. */
export const WINTER_DAY = valleyHours([
  -16, -16, -15.5, -14, -12, -10, -8, -6.5, -6, -6.5, -8, -10.5, -12, -13,
]);

export function rideRequest(change: Partial<RideRequest> & { readonly fall?: Lapse } = {}): RideRequest {
  const machine = change.machine ?? trailMachine();
  return {
    machine,
    ride: VALLEY_PASS_AND_BACK,
    hours: WINTER_DAY,
    fall: USUAL_LAPSE,
    now: MORNING,
    ...change,
  };
}
