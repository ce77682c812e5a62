import fc from 'fast-check';
import { makePlan } from '@/lib/plan/make-plan';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import { expectOk } from '@/lib/result/result';
import { nightRequests, sharedSeries } from '@/lib/share/night-requests';
import { type SharedNight, sharedNightSchema } from '@/lib/share/shared-night';
import { addMinutes, HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';

/** 17:00 in Chicago on 16 January 2027. */
export const EVENING: Instant = instant(Date.UTC(2027, 0, 16, 23));

/** An evening as it was shared, and the quarter of an hour it is looked at. */
export type Evening = { readonly night: SharedNight; readonly now: Instant };

type ValueOf<A> = A extends fc.Arbitrary<infer T> ? T : never;

const engine = fc.record({
  mains: fc.constantFrom([410], [410, 410], [410, 400, 410], [170], [162.5, 160]),
  box: fc.uniqueArray(fc.integer({ min: -4, max: 6 }), { minLength: 1, maxLength: 8 }),
  far: fc.boolean(),
  count: fc.constantFrom(1, 2, 3, 3, 3),
  trim: fc.constantFrom(null, { lowest: 1, highest: 4, baseline: 2, percentPerPosition: 1.5 }),
  judged: fc.constantFrom('edge', 'right', 'size-rich'),
  tonight: fc.constantFrom(0, 0, 0.02),
});

/** The box in steps of the engine's own series, now and then with a jet that is far too large. */
function machineOf({ mains, box, far, count, trim, judged, tonight }: ValueOf<typeof engine>) {
  const base = mains[0]!;
  const step = base > 300 ? 10 : 2.5;
  const sizes = [...box.map((k) => base + k * step), ...(far ? [base * 2] : [])];
  return {
    name: 'Twin',
    carburettors: mains.map((main) => ({ main })),
    box: sizes.map((size) => ({ size, count })),
    baseline: { air: { temperatureC: -6, pressureHpa: 985, relativeHumidity: 0.8 }, judged },
    ...(trim === null ? {} : { trim }),
    ...(tonight === 0 ? {} : { tonight: { logAreas: mains.map(() => tonight), run: 'Round 1' } }),
  };
}

const evening = fc.record({
  engine,
  runs: fc.integer({ min: 1, max: 8 }),
  every: fc.constantFrom(12, 30, 45, 90),
  start: fc.integer({ min: -2, max: 4 }),
  fall: fc.integer({ min: -2, max: 4 }),
  drop: fc.integer({ min: 0, max: 8 }),
  hours: fc.constantFrom(4, 12, 12, 12),
  accepted: fc.boolean(),
  told: fc.constantFrom('nothing', 'baseline', 'plan', 'other', 'largest'),
  made: fc.constantFrom(0, 0, 1, 2),
  reading: fc.constantFrom(null, -5, 2),
  delay: fc.constantFrom(0, 0, 20, 50),
  now: fc.integer({ min: -4, max: 44 }),
});

/**
 * Any evening at all: a plan made at five and accepted or not, a forecast that turned colder since, jets told or not,
 * runs made, a reading, a delay; looked at some quarter of an hour from four in the afternoon on.
 */
export const anyEvening: fc.Arbitrary<Evening> = evening.map((given) => {
  const now = addMinutes(EVENING, 15 * given.now);
  const base = nightOf(given, 0);
  const first = given.accepted ? acceptedOf(base) : undefined;
  const night = nightOf(given, given.drop);
  const machine = night.machines[0]!;
  const { mains } = given.engine;
  const others = machine.machine.box.find(({ count }) => count >= mains.length);
  const trim = given.engine.trim?.baseline ?? null;
  const baseline = { mains: [...mains], trim };
  const told = {
    nothing: undefined,
    baseline,
    plan: first?.at(-1),
    other: others === undefined ? baseline : { mains: mains.map(() => others.size), trim },
    largest: { mains: mains.map(() => Math.max(...machine.machine.box.map(({ size }) => size))), trim },
  }[given.told];
  const made = Array.from({ length: Math.min(given.made, given.runs) }, (_, run) => ({
    run,
    setting: told ?? baseline,
  }));
  return {
    now,
    night: sharedNightSchema.parse({
      ...night,
      sharedAt: isoUtc(now),
      machines: [
        { ...machine, ...(first ? { accepted: first } : {}), ...(told ? { fitted: told } : {}), made },
      ],
      readings:
        given.reading === null
          ? []
          : [{ id: 'r', time: isoUtc(addMinutes(now, -5)), temperatureC: given.start - 4 + given.reading }],
    }),
  };
});

function nightOf(given: ValueOf<typeof evening>, drop: number): SharedNight {
  const { runs, every, start, fall, hours, delay } = given;
  return sharedNightSchema.parse({
    event: {
      name: 'Night drags',
      timezone: 'America/Chicago',
      elevationM: 250,
      runs: Array.from({ length: runs }, (_, i) => {
        const at = addMinutes(EVENING, 60 + delay + i * every);
        return {
          name: `Round ${i + 1}`,
          start: isoUtc(at),
          end: isoUtc(addMinutes(at, 10)),
          typicalSeconds: 6.4,
        };
      }),
    },
    machines: [{ machine: machineOf(given.engine) }],
    hours: Array.from({ length: hours + 4 }, (_, i) => ({
      time: isoUtc(instant(EVENING + (i - 3) * HOUR_MS)),
      temperatureC: start - 4 - fall * Math.max(0, i - 3) - drop,
      pressureHpa: 985,
      relativeHumidity: 0.8,
    })),
    sharedAt: isoUtc(EVENING),
  });
}

/** What the plan made at five would have the racer do; undefined where there is none. */
function acceptedOf(night: SharedNight) {
  const requests = nightRequests(night, { series: expectOk(sharedSeries(night)), now: EVENING });
  const plan = requests.ok ? makePlan(requests.value[0]!) : null;
  return plan?.ok === true
    ? settingsAsGiven(plan.value).map(({ mains, trim }) => ({ mains: [...mains], trim }))
    : undefined;
}
