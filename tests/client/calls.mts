// The README's calls as a caller in TypeScript makes them, with a client made from the service's own document.
import { deepStrictEqual } from 'node:assert';
import { readFileSync } from 'node:fs';
import createClient from 'openapi-fetch';
import type { components, paths } from './schema.d.ts';

type Sent = components['schemas'];

const AIR: Sent['AirRequest'] = {
  states: [{ temperatureC: -20, pressureHpa: 990, relativeHumidity: 0.8 }],
};

const NIGHT: Sent['PlanRequest'] = {
  event: {
    name: 'Night drags',
    timezone: 'America/Chicago',
    elevationM: 250,
    runs: [
      { name: 'Round 1', start: '2027-01-16T19:00:00-06:00', end: '2027-01-16T19:10:00-06:00' },
      { name: 'Round 2', start: '2027-01-16T21:30:00-06:00', end: '2027-01-16T21:40:00-06:00' },
    ],
  },
  hours: [
    { time: '2027-01-16T18:00:00-06:00', temperatureC: -9, pressureHpa: 986, relativeHumidity: 0.8 },
    { time: '2027-01-16T23:00:00-06:00', temperatureC: -21, pressureHpa: 988, relativeHumidity: 0.8 },
  ],
  machines: [
    {
      machine: {
        name: 'Twin',
        carburettors: [{ main: 410 }, { main: 410 }],
        box: [
          { size: 400, count: 2 },
          { size: 410, count: 2 },
          { size: 420, count: 2 },
        ],
        baseline: { air: { temperatureC: -8, pressureHpa: 985, relativeHumidity: 0.8 } },
      },
    },
    {
      machine: {
        name: 'Single',
        carburettors: [{ main: 360 }],
        box: [
          { size: 350, count: 1 },
          { size: 360, count: 1 },
          { size: 370, count: 1 },
        ],
        baseline: { air: { temperatureC: -2, pressureHpa: 985, relativeHumidity: 0.8 } },
      },
    },
  ],
};

const { README = '', SERVICE = '' } = process.env;
const told = [...readFileSync(README, 'utf8').matchAll(/application\/json' [^']*-d '([^']+)'/g)];
deepStrictEqual(
  told.map(([, body = '']) => JSON.parse(body) as unknown),
  [AIR, NIGHT],
);

const service = createClient<paths>({ baseUrl: SERVICE });

const air = await service.POST('/api/air', { body: AIR });
if (air.error !== undefined) throw new Error(air.error.detail);
// Dry air at 990 hPa and -20 degC weighs 99,000 / (287.05 x 253.15) kg/m3 (gas constant of dry air: ISO 2533).
const dry = 99_000 / (287.05 * 253.15);
const [state] = air.data.states;
if (state === undefined || Math.abs(state.densityKgM3 / dry - 1) > 0.002)
  throw new Error(`${state?.densityKgM3} kg/m3 is no density of that air`);

const night = await service.POST('/api/plan', { body: NIGHT });
if (night.error !== undefined) throw new Error(night.error.detail);
if (!('plans' in night.data)) throw new Error('two machines were answered with one plan');
deepStrictEqual(
  night.data.plans.map(({ machine }) => machine),
  ['Twin', 'Single'],
);
for (const { machine, call } of night.data.plans) console.log(`${machine}: ${call}`);

const refused = await service.GET('/api/forecast', { params: { query: { lat: 91, lon: 0 } } });
deepStrictEqual(
  refused.error?.errors?.map(({ path }) => path),
  ['lat'],
);
