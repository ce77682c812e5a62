import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { handle } from '@/app/api/_http/handle';
import type { LiveDeps } from '@/app/api/_live/live-night';
import { tableAnswer } from '@/app/api/plan.csv/table-answer';
import { calendarAnswer } from '@/app/api/plan.ics/calendar-answer';
import { fail } from '@/lib/result/result';
import { packNight } from '@/lib/share/night-link';
import type { SharedNight } from '@/lib/share/shared-night';
import { addMinutes } from '@/lib/time/instant';
import { readCalendar } from '@/tests/support/calendar';
import { acceptedEvening, SHARED_AT } from '@/tests/support/shared-evening';
import { problemOf } from './ask';

const NIGHT = acceptedEvening();
const DAY = 24 * 3_600_000;

/** Two hours after sharing, and no service answers. */
const DEPS: LiveDeps = {
  fetchForecast: async () => fail({ code: 'all-sources-failed', tries: [], retryAfterSeconds: 30 }),
  now: () => addMinutes(SHARED_AT, 120),
};

const iso = (days: number) => new Date(SHARED_AT + days * DAY).toISOString();
const day = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: 0, max: 0.7, noNaN: true }) },
  fc.double({ min: -400, max: 400, noNaN: true }),
);
const setting = fc.record({
  mains: fc.array(fc.constantFrom(10, 390, 400, 410, 420, 9999), { minLength: 1, maxLength: 3 }),
  trim: fc.constantFrom(null, null, null, 2, -7),
});
const most = <T>(usual: T, others: fc.Arbitrary<T>): fc.Arbitrary<T> =>
  fc.oneof({ weight: 3, arbitrary: fc.constant(usual) }, others);

/** Nights that every field of the schema takes, and that make sense or none. */
const anyNight: fc.Arbitrary<SharedNight> = fc
  .record({
    runs: most(
      NIGHT.event.runs,
      fc.array(
        fc
          .tuple(day, day, fc.string({ minLength: 1, maxLength: 12, unit: 'grapheme' }))
          .map(([a, b, name]) => ({
            name: name.trim() === '' ? 'run' : name.trim(),
            start: iso(Math.min(a, b)),
            end: iso(a + (b - a) * 0.02),
            weight: 1,
          })),
        { maxLength: 12 },
      ),
    ),
    hours: most(
      NIGHT.hours,
      fc.array(
        fc
          .tuple(day, fc.double({ min: -60, max: 50, noNaN: true }))
          .map(([at, temperatureC]) => ({ time: iso(at), temperatureC })),
        { maxLength: 20 },
      ),
    ),
    accepted: most(
      NIGHT.machines[0]!.accepted,
      fc.option(fc.array(setting, { maxLength: 12 }), { nil: undefined }),
    ),
    fitted: most(NIGHT.machines[0]!.fitted, fc.option(setting, { nil: undefined })),
    made: fc.option(fc.array(fc.record({ run: fc.nat(13), setting }), { maxLength: 4 }), { nil: undefined }),
    swapMinutes: most(15, fc.constantFrom(0, 600, 1.5)),
    ride: most(false, fc.constant(true)),
    hoursTyped: most<boolean | undefined>(undefined, fc.constant(true)),
    sharedAt: most(NIGHT.sharedAt, day.map(iso)),
  })
  .map(({ runs, hours, accepted, fitted, made, swapMinutes, ride, hoursTyped, sharedAt }) => ({
    ...NIGHT,
    event: { ...NIGHT.event, runs, swapMinutes, ride },
    machines: [{ machine: NIGHT.machines[0]!.machine, accepted, fitted, made }],
    hours,
    hoursTyped,
    sharedAt,
  }));

const answered = (request: Request, answer: typeof calendarAnswer | typeof tableAnswer) =>
  handle(request, () => answer(request, DEPS));

describe('Whatever night an address carries', () => {
  test('is answered with a calendar and a table, or refused in words', async () => {
    const stati = new Map<number, number>();
    await fc.assert(
      fc.asyncProperty(anyNight, async (night) => {
        const address = (name: string) => new Request(`http://localhost/api/${name}?d=${packNight(night)}`);
        const calendar = await answered(address('plan.ics'), calendarAnswer);
        stati.set(calendar.status, (stati.get(calendar.status) ?? 0) + 1);
        if (calendar.status === 200) {
          const { events } = readCalendar(await calendar.text());
          expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
          expect(events.filter(({ start, end }) => !(start < end))).toEqual([]);
        } else expect([400, 422, 503]).toContain((await problemOf(calendar)).status);
        const table = await answered(address('plan.csv'), tableAnswer);
        if (table.status !== 200) expect([400, 422, 503]).toContain((await problemOf(table)).status);
      }),
      { numRuns: 200, seed: 11 },
    );
    // Nights of each kind were among them.
    expect(stati.get(200) ?? 0).toBeGreaterThan(30);
    expect(stati.get(422) ?? 0).toBeGreaterThan(30);
  });
});
