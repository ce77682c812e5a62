import type { PlanBody } from './ask';

/** A night that gets colder by 3 K an hour: an invented twin, distinct numbers. Hours every full hour. */
export const RUN = (name: string, start: string, end: string) => ({ name, start, end });

type Night = PlanBody & Required<Pick<PlanBody, 'machine' | 'hours'>>;

export const NIGHT: Night = {
  machine: {
    name: 'Twin',
    carburettors: [{ main: 410 }, { main: 410 }],
    box: [390, 400, 410, 420, 430, 440, 450].map((size) => ({ size, count: 2 })),
    baseline: { air: { temperatureC: -8, pressureHpa: 985, relativeHumidity: 0.75 } },
  },
  event: {
    name: 'Night drags',
    timezone: 'America/Chicago',
    elevationM: 250,
    runs: [
      RUN('Round 1', '2027-01-16T19:00:00-06:00', '2027-01-16T19:10:00-06:00'),
      RUN('Round 2', '2027-01-16T20:30:00-06:00', '2027-01-16T20:40:00-06:00'),
      RUN('Round 3', '2027-01-16T22:00:00-06:00', '2027-01-16T22:10:00-06:00'),
      RUN('Round 4', '2027-01-16T23:30:00-06:00', '2027-01-16T23:40:00-06:00'),
    ],
  },
  hours: Array.from({ length: 9 }, (_, i) => ({
    time: new Date(Date.parse('2027-01-17T00:00:00Z') + i * 3_600_000).toISOString(),
    temperatureC: -7 - 3 * i,
    pressureHpa: 986 + 0.5 * i,
    relativeHumidity: 0.8,
  })),
  now: '2027-01-16T18:00:00-06:00',
};

export const night = (more: Partial<PlanBody> = {}): PlanBody => ({ ...NIGHT, ...more });
export const withMachine = (more: Partial<Night['machine']>): PlanBody =>
  night({ machine: { ...NIGHT.machine, ...more } });
export const withEvent = (more: Partial<PlanBody['event']>): PlanBody =>
  night({ event: { ...NIGHT.event, ...more } });
