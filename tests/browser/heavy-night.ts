/** Machines with full boxes on one night: an invented field; with a hundred of them near the largest that is taken. */
export function heavyNight(machines = 30) {
  const minutes = (count: number) => new Date(Date.UTC(2027, 0, 17, 1, count)).toISOString();
  return {
    event: {
      name: 'All of them',
      timezone: 'America/Chicago',
      elevationM: 250,
      runs: Array.from({ length: 8 }, (_, i) => ({
        name: `Round ${i + 1}`,
        start: minutes(40 * i),
        end: minutes(40 * i + 10),
      })),
    },
    now: '2027-01-17T00:00:00Z',
    hours: Array.from({ length: 12 }, (_, i) => ({
      time: new Date(Date.UTC(2027, 0, 17, i)).toISOString(),
      temperatureC: -6 - 1.5 * i,
      pressureHpa: 986,
      relativeHumidity: 0.8,
    })),
    machines: Array.from({ length: machines }, (_, i) => ({
      machine: {
        name: `Machine ${i + 1}`,
        carburettors: [{ main: 400 + (i % 5) * 10 }, { main: 400 + (i % 5) * 10 }],
        box: Array.from({ length: 18 }, (_jet, j) => ({ size: 330 + 10 * j, count: 2 })),
        baseline: { air: { temperatureC: -8, pressureHpa: 985, relativeHumidity: 0.75 } },
      },
    })),
  };
}
