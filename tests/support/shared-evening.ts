import { expectOk } from '@/lib/result/result';
import { livePlans } from '@/lib/share/live-plans';
import { packNight } from '@/lib/share/night-link';
import { type SharedNight, sharedNightSchema } from '@/lib/share/shared-night';
import { addMinutes, HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';

/** 31 October 2026, 15:00 in Chicago: the clocks go back from 02:00 to 01:00 that night, at 07:00 UTC. */
export const SHARED_AT = instant(Date.UTC(2026, 9, 31, 20));
export const CLOCKS_GO_BACK = instant(Date.UTC(2026, 10, 1, 7));
/** Nine rounds, one an hour from 20:00: the clock shows 01:00 twice. */
export const FIRST_ROUND = instant(Date.UTC(2026, 10, 1, 1));
export const ROUNDS = 9;
export const SWAP_MINUTES = 15;
export const START_C = 3;
export const FALL_PER_HOUR = 1.6;

export const roundStart = (round: number): Instant => instant(FIRST_ROUND + round * HOUR_MS);

/** An invented racer on an invented lake, with a name that needs every kind of escaping. */
export function sharedEvening(more: object = {}): SharedNight {
  return sharedNightSchema.parse({
    event: {
      name: 'Nächte; Eis, Öl\\Rauch am See Ørnvann — zwölfter Lauf der Wintermeisterschaft',
      timezone: 'America/Chicago',
      place: { name: 'Lake Orvana', latitude: 46.1, longitude: -89.2 },
      elevationM: 250,
      swapMinutes: SWAP_MINUTES,
      runs: Array.from({ length: ROUNDS }, (_, i) => ({
        name: `Round ${i + 1}`,
        start: isoUtc(roundStart(i)),
        end: isoUtc(addMinutes(roundStart(i), 10)),
      })),
    },
    machines: [
      {
        machine: {
          name: 'Twin',
          carburettors: [{ main: 400 }, { main: 410 }],
          box: [370, 380, 390, 400, 410, 420, 430, 440, 450, 460].map((size) => ({ size, count: 2 })),
          // Cheap enough for a second swap, so that there is one to move and to call off.
          swapWorthPercent: 0.5,
          baseline: { air: { temperatureC: -1, pressureHpa: 985.5, relativeHumidity: 0.8 } },
        },
        fitted: { mains: [400, 410] },
      },
    ],
    hours: Array.from({ length: 18 }, (_, i) => ({
      time: isoUtc(instant(SHARED_AT + i * HOUR_MS)),
      rawModel: false,
      temperatureC: Math.round((START_C - FALL_PER_HOUR * i) * 10) / 10,
      pressureHpa: 985.5,
      relativeHumidity: 0.8,
    })),
    sharedAt: isoUtc(SHARED_AT),
    ...more,
  });
}

/** The evening with the plan that was made of its own hours accepted. */
export function acceptedEvening(more: object = {}): SharedNight {
  const night = sharedEvening(more);
  const plans = expectOk(livePlans(night, { series: null, clock: SHARED_AT }));
  return {
    ...night,
    machines: night.machines.map((each, i) => ({
      ...each,
      accepted: plans[i]!.accepted!.settings.map(({ mains, trim }) => ({ mains: [...mains], trim })),
    })),
  };
}

export const payloadOf = (night: SharedNight): string => packNight(night);
