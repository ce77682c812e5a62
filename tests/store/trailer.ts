import { comparisonRecordSchema } from '@/lib/store/comparison-record';
import {
  boxRecordSchema,
  eventRecordSchema,
  forecastRecordSchema,
  logRecordSchema,
  machineRecordSchema,
  preferencesSchema,
} from '@/lib/store/records';
import type { SnapshotValues } from '@/lib/store/store-type';
import type { Trace } from '@/lib/store/trace-schema';

const AIR = { temperatureC: -9.5, pressureHpa: 984.2, relativeHumidity: 0.78 };
const MADE = '2027-01-15T17:30:00.000Z';

const PHONE = '0a1b2c3d4e5f';
const LAPTOP = '5f4e3d2c1b0a';
const TRACE: Trace = { from: [PHONE, 1], marks: { name: [LAPTOP, 3] }, seen: { [PHONE]: 2, [LAPTOP]: 3 } };

const sled = {
  machine: {
    name: 'Merlow 800 “ice”',
    carburettors: [{ main: 410 }, { main: 420 }],
    jetMarking: 'flow',
    box: [
      { size: 400, count: 2 },
      { size: 410, count: 2 },
      { size: 420, count: 3 },
    ],
    baseline: {
      air: AIR,
      provenOn: '2027-01-09',
      judged: 'size-rich',
      intakeOffsetC: 4,
      note: 'plugs at the bank',
    },
    trim: { lowest: 0, highest: 6, baseline: 3, percentPerPosition: 1.5 },
    pilot: { jet: 45, jets: [42.5, 45, 47.5], screw: 'fuel', turns: 1.25 },
    needle: { groove: 3, grooves: 5 },
    intakeOffsetC: 5,
    response: {
      pressureExponent: 0.7,
      temperatureExponent: 0.61,
      pressureSd: 0.11,
      temperatureSd: 0.05,
      correlation: 0.3,
      origin: 'log',
    },
    ratedPowerHp: 165,
  },
  baselines: [
    {
      id: 'base1',
      mains: [410, 420],
      trim: 3,
      baseline: { air: { temperatureC: -9.5, elevationM: 280, dewPointC: -12 } },
    },
  ],
  activeBaselineId: 'base1',
  boxId: 'box1',
  hardware: [{ id: 'hw1', kind: 'bored', amount: 0.5, on: '2026-12-28', note: 'both carburettors' }],
  chart: [{ temperatureC: -20, elevationM: 300, main: 430 }],
  toBeReproven: true,
};

const night = {
  event: {
    name: 'Gorm Lake, 2nd night · Jõulud',
    timezone: 'America/Chicago',
    place: { name: 'Gorm Lake', latitude: 46.125, longitude: -94.75 },
    elevationM: 362,
    runs: [
      {
        name: 'Round 1',
        start: '2027-01-16T19:00:00-06:00',
        end: '2027-01-16T19:06:00-06:00',
        weight: 1,
        typicalSeconds: 41.8,
      },
      { name: 'Final', start: '2027-01-16T23:10:00-06:00', end: '2027-01-16T23:20:00-06:00', weight: 3 },
    ],
  },
  machineIds: ['m1'],
  typed: {
    hours: [
      { time: '2027-01-16T18:00:00-06:00', temperatureC: 0, relativeHumidity: 0 },
      { time: '2027-01-17T00:00:00-06:00', temperatureC: -17.2, altimeterHpa: 1021 },
    ],
    pressure: { kind: 'sea-level', hpa: 1019.4 },
  },
  forecastId: 'f1',
  readings: [{ id: 'r1', time: '2027-01-16T19:40:00-06:00', temperatureC: -11, confirmed: true }],
  accepted: { m1: [{ mains: [410, 420], trim: 3 }] },
  acceptedAir: { m1: [{ start: '2027-01-16T20:15:00-06:00', temperatureC: -12.5 }] },
  fitted: { m1: { mains: [410, 420], trim: 3 } },
  made: { m1: [{ run: 0, setting: { mains: [410, 420], trim: 3 } }] },
  club: {
    classes: [
      {
        id: 'k1',
        name: 'Öpen',
        runs: [
          { name: 'Heat 1', start: '2027-01-16T20:15:00-06:00', end: '2027-01-16T20:21:00-06:00', weight: 2 },
        ],
      },
    ],
    racers: { m1: { name: 'Ilsa Vorn', classId: 'k1' } },
  },
};

/** One record of every table with every field that can be there, letters that are not ASCII, and a removed one. */
export function trailer(): SnapshotValues {
  return {
    machines: [{ id: 'm1', updatedAt: MADE, trace: TRACE, value: machineRecordSchema.parse(sled) }],
    boxes: [
      {
        id: 'box1',
        updatedAt: MADE,
        trace: TRACE,
        value: boxRecordSchema.parse({ name: 'Anhänger', entries: [{ size: 430, count: 2 }] }),
      },
    ],
    events: [{ id: 'e1', updatedAt: MADE, trace: TRACE, value: eventRecordSchema.parse(night) }],
    log: [
      {
        id: 'l1',
        updatedAt: MADE,
        trace: TRACE,
        value: logRecordSchema.parse({
          machineId: 'm1',
          eventId: 'e1',
          run: 'Round 1',
          at: '2027-01-17T01:06:00Z',
          air: AIR,
          setting: { mains: [410, 420], trim: 3 },
          verdict: 'rich',
          sizes: 0.5,
          judgedBy: 'piston-wash',
          seconds: 41.62,
          speedKmh: 171.4,
          note: 'held it to the flag',
        }),
      },
    ],
    forecasts: [
      {
        id: 'f1',
        updatedAt: MADE,
        trace: TRACE,
        value: forecastRecordSchema.parse({
          place: night.event.place,
          forecast: {
            latitude: night.event.place.latitude,
            longitude: night.event.place.longitude,
            elevationM: 362,
            modelElevationM: 340,
            name: 'a service',
            attribution: 'Data by a service',
            attributionUrl: null,
            issuedAt: '2027-01-16T18:00:00Z',
            fetchedAt: '2027-01-16T22:10:00Z',
            hours: [
              {
                time: '2027-01-17T00:00:00Z',
                temperatureC: -9,
                pressureHpa: 972.5,
                pressureFrom: 'sea-level',
                relativeHumidity: 0.7,
                spreadK: 1.1,
                origin: 'forecast',
                temperatureBy: 'open-meteo',
                pressureBy: 'standard-atmosphere',
              },
            ],
            by: 'open-meteo',
            elevationFrom: 'given',
            freshness: 'stale',
            freshUntil: '2027-01-16T22:25:00Z',
            tries: [{ source: 'met-norway', problem: { code: 'timeout' } }],
            missing: ['2027-01-17T01:00:00Z'],
          },
        }),
      },
    ],
    comparisons: [
      {
        id: 'c1',
        updatedAt: MADE,
        trace: TRACE,
        value: comparisonRecordSchema.parse({
          name: 'Pipe',
          part: 'tuned pipe',
          machineId: 'm1',
          standard: 'SAE J1349',
          distanceM: null,
          pulls: [
            { id: 'p1', side: 'before', air: AIR, setting: { mains: [410, 420] }, powerHp: 161.2 },
            {
              id: 'p2',
              side: 'after',
              air: AIR,
              setting: { mains: [420, 430] },
              powerHp: 163.9,
              at: '2027-01-10T15:00:00Z',
            },
          ],
        }),
      },
    ],
    preferences: [
      {
        id: 'preferences',
        updatedAt: MADE,
        trace: TRACE,
        value: preferencesSchema.parse({
          temperature: 'C',
          theme: 'night',
          brightness: 0.5,
          eventId: 'e1',
          machineId: 'm1',
        }),
      },
    ],
    removed: [
      {
        table: 'machines',
        id: 'm2',
        trace: {
          from: [LAPTOP, 4],
          marks: { [PHONE]: [PHONE, 3] },
          seen: { [PHONE]: 3, [LAPTOP]: 4, '=1c2d3e4f': 0 },
        },
      },
    ],
    setAside: [
      {
        key: 'events/e1/fitted~m1/1c2d3e4f',
        why: 'merged',
        table: 'events',
        id: 'e1',
        text: '{"mains":[400,410],"trim":2}',
        issues: [],
        path: 'fitted/m1',
        from: { name: 'Anhänger.json', side: 'there' },
      },
    ],
  };
}
