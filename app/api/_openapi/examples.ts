import type * as z from 'zod/mini';
import type { airRequestSchema } from '@/lib/contract/air-request';
import type { planRequestSchema } from '@/lib/contract/plan-request';

export const AIR_EXAMPLE: z.input<typeof airRequestSchema> = {
  states: [
    { temperatureC: -20, pressureHpa: 990, relativeHumidity: 0.8 },
    { temperatureC: 12.5, altimeterHpa: 1018, elevationM: 1600, dewPointC: 4 },
  ],
};

/** An invented night on an invented lake. */
export const PLAN_EXAMPLE: z.input<typeof planRequestSchema> = {
  machine: {
    name: 'Twin, black hood',
    carburettors: [{ main: 410 }, { main: 410 }],
    jetMarking: 'flow',
    box: [390, 400, 410, 420, 430, 440].map((size) => ({ size, count: 2 })),
    baseline: { air: { temperatureC: -8, pressureHpa: 985, relativeHumidity: 0.8 }, judged: 'right' },
  },
  event: {
    name: 'Night drags on Lake Orvana',
    timezone: 'America/Chicago',
    elevationM: 250,
    runs: [
      { name: 'Round 1', start: '2027-01-16T19:00:00-06:00', end: '2027-01-16T19:10:00-06:00' },
      { name: 'Round 2', start: '2027-01-16T20:30:00-06:00', end: '2027-01-16T20:40:00-06:00' },
      { name: 'Round 3', start: '2027-01-16T22:00:00-06:00', end: '2027-01-16T22:10:00-06:00' },
    ],
  },
  hours: [
    { time: '2027-01-16T18:00:00-06:00', temperatureC: -9, pressureHpa: 986, relativeHumidity: 0.75 },
    { time: '2027-01-16T20:00:00-06:00', temperatureC: -14, pressureHpa: 987, relativeHumidity: 0.8 },
    { time: '2027-01-16T22:00:00-06:00', temperatureC: -19, pressureHpa: 988, relativeHumidity: 0.8 },
    { time: '2027-01-17T00:00:00-06:00', temperatureC: -22, pressureHpa: 989, relativeHumidity: 0.85 },
  ],
  now: '2027-01-16T18:00:00-06:00',
};
