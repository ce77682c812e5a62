// @vitest-environment jsdom
import { cleanup, render } from '@testing-library/react';
import fc from 'fast-check';
import { afterEach, expect, it } from 'vitest';
import { planAnswers } from '@/app/api/plan/plan-answers';
import { Fall } from '@/components/night/fall';
import { Plate } from '@/components/night/plate/plate';
import type { PlanAnswer } from '@/lib/contract/plan-answer';
import { planRequestSchema } from '@/lib/contract/plan-request';
import type { Night } from '@/lib/night/night';
import { makePlan } from '@/lib/plan/make-plan';
import { expectOk } from '@/lib/result/result';
import { keptNight } from '@/lib/share/kept-night';
import { nightRequests, sharedSeries } from '@/lib/share/night-requests';
import { standingOf } from '@/lib/standing/standing';
import { addMinutes } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { METRIC_UNITS } from '@/lib/units/choice';
import { anyEvening, type Evening } from '@/tests/support/any-evening';
import { type FirstScreen, readFirstScreen } from '@/tests/support/read-first-screen';
import { NO_ACTS } from './no-acts';

afterEach(cleanup);

const ZONE = 'America/Chicago';
/** So many nights with a plan, the same for the same number. `EVENINGS=200` tries more of them. */
const NIGHTS = Number(process.env.EVENINGS ?? 60);

const evening = fc.tuple(anyEvening, fc.integer({ min: 0, max: 1600 }), fc.boolean()).map(
  ([{ night, now }, minutes, hoursTyped]): Evening => ({
    now,
    night: { ...night, hoursTyped, sharedAt: isoUtc(addMinutes(now, -minutes)) },
  }),
);

/** The plan as the API tells it; null where this evening has none. */
function answerOf({ night, now }: Evening): PlanAnswer | null {
  const body = planRequestSchema.parse({
    ...night.machines[0],
    event: night.event,
    hours: night.hours,
    readings: night.readings,
    now: isoUtc(now),
  });
  const answers = planAnswers(body, {
    series: expectOk(sharedSeries(night)),
    clock: now,
    voice: { zone: ZONE, units: METRIC_UNITS },
    warnings: [],
  });
  return answers.ok ? (answers.value[0] ?? null) : null;
}

/** The first screen of the same evening, drawn from its records, and what is read from it. */
function readOf({ night, now }: Evening): FirstScreen {
  const series = expectOk(sharedSeries(night));
  const request = expectOk(nightRequests(night, { series, now }))[0]!;
  const standing = standingOf(request, expectOk(makePlan(request)));
  let ids = 0;
  const kept = keptNight(night, () => `id ${ids++}`);
  const stored = { revision: 1, updatedAt: night.sharedAt };
  const shown: Night = {
    records: {
      event: { ...kept.event, ...stored },
      machine: { ...kept.machines[0]!, ...stored },
      box: null,
      forecast: null,
      log: [],
    },
    zone: ZONE,
    machine: request.machine,
    series,
    fitted: standing.inNow.setting,
    request,
  };
  const { container } = render(
    <main>
      <Plate night={shown} standing={standing} acts={NO_ACTS} zone={ZONE} units={METRIC_UNITS} />
      <Fall night={shown} standing={standing} voice={{ zone: ZONE, units: METRIC_UNITS }} />
    </main>,
  );
  const read = readFirstScreen(container);
  cleanup();
  return read;
}

/** What is older than a day is told in whole hours. */
const asTold = (minutes: number) => (minutes < 1440 ? Math.floor(minutes) : 60 * Math.floor(minutes / 60));

const WORD = { lean: 'LEAN', right: 'GOOD', rich: 'RICH' } as const;

/** The same five answers from the JSON, by the clock of the browser and not by the product's. */
function expected(answer: PlanAnswer, { night, now }: Evening): FirstScreen {
  const { standing, swaps, runs, source } = answer;
  const { setting } = standing.inNow;
  const swap = standing.job.swap === null ? undefined : swaps[standing.job.swap];
  const clock = new Intl.DateTimeFormat('en-GB', { timeZone: ZONE, hour: '2-digit', minute: '2-digit' });
  const planned = runs.filter(({ state }) => state === 'planned');
  const worst = planned.toSorted((a, b) => b.chanceOfLean - a.chanceOfLean)[0];
  const made = source.issuedAt ?? source.fetchedAt;
  return {
    inNow: { mains: setting.mains, trim: setting.trim ?? null },
    state: standing.state === null ? null : WORD[standing.state],
    put:
      swap === undefined
        ? null
        : {
            // From when it can be done, and once it can, by when it has to be begun.
            clock: clock.format(
              Date.parse(now < Date.parse(swap.windowStart) ? swap.windowStart : swap.latestStart),
            ),
            mains: swap.to.mains,
            trim: swap.to.trim ?? null,
          },
    risk:
      worst === undefined
        ? null
        : { ...worst.leanCount, run: worst.leanCount.lean === 0 ? null : worst.name },
    ageMinutes: night.hoursTyped === true || made === null ? null : asTold((now - Date.parse(made)) / 60_000),
  };
}

it(`says on its first screen, in words alone, what the plan's JSON says, on ${NIGHTS} nights`, () => {
  const seen = { plans: 0, swaps: 0, lean: 0, rich: 0, risks: 0, aged: 0, trims: 0 };
  for (const given of fc.sample(evening, { numRuns: 2 * NIGHTS, seed: 14 })) {
    const answer = seen.plans === NIGHTS ? null : answerOf(given);
    if (answer === null) continue;
    const want = expected(answer, given);
    expect(readOf(given)).toEqual(want);
    seen.plans += 1;
    if (want.put !== null) seen.swaps += 1;
    if (want.state === 'LEAN') seen.lean += 1;
    if (want.state === 'RICH') seen.rich += 1;
    if ((want.risk?.lean ?? 0) > 0) seen.risks += 1;
    if ((want.ageMinutes ?? 0) > 60) seen.aged += 1;
    if (want.inNow.trim !== null) seen.trims += 1;
  }
  expect(seen.plans).toBe(NIGHTS);
  // The nights reach what they are to try.
  for (const [kind, count] of Object.entries(seen)) expect(count, kind).toBeGreaterThan(5);
}, 600_000);
