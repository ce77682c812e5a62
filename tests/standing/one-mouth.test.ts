import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planAnswers } from '@/app/api/plan/plan-answers';
import { nextSizeUp } from '@/lib/carb/existing-size';
import type { Setting } from '@/lib/carb/machine';
import { planRequestSchema } from '@/lib/contract/plan-request';
import { makePlan } from '@/lib/plan/make-plan';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import type { Plan, PlanRequest } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { calendarActs } from '@/lib/share/calendar-acts';
import { livePlans } from '@/lib/share/live-plans';
import { nightRequests, sharedSeries } from '@/lib/share/night-requests';
import { planCsv } from '@/lib/share/plan-csv';
import { type Standing, standingOf } from '@/lib/standing/standing';
import { isoUtc } from '@/lib/time/zone';
import { METRIC_UNITS } from '@/lib/units/choice';
import { readingWorthSentence } from '@/lib/words/reading-worth';
import { riskSentence } from '@/lib/words/risk';
import { settingText } from '@/lib/words/settings';
import { anyEvening, type Evening } from '@/tests/support/any-evening';
import { makeBriefing } from '@/tests/support/make-briefing';
import { expectNoneSentOutLean, saidTexts } from '@/tests/support/said-texts';

const ZONE = 'America/Chicago';
const voice = { zone: ZONE, units: METRIC_UNITS };

/** Everything that tells a racer something, from one and the same evening. */
type Told = {
  readonly request: PlanRequest;
  readonly standing: Standing;
  readonly plan: Plan;
  readonly texts: readonly string[];
};

function toldOf({ night, now }: Evening): Told | null {
  const series = expectOk(sharedSeries(night));
  const [request] = expectOk(nightRequests(night, { series, now }));
  if (request === undefined) return null;
  const plan = makePlan(request);
  if (!plan.ok) return null;
  const standing = standingOf(request, plan.value);
  return { request, standing, plan: plan.value, texts: saidTexts(standing, voice) };
}

const jets = ({ mains }: Setting) => mains.join('/');

/** No size stands anywhere that is not owned, in, or one that can be bought. */
function expectSizesThatExist({ request, plan, standing }: Told): void {
  const { machine } = request;
  const owned = new Set([
    ...machine.box.map(({ size }) => size),
    ...machine.carburettors.map(({ main }) => main),
    ...plan.inNow.setting.mains,
    ...request.made.flatMap(({ setting }) => setting.mains),
  ]);
  for (const { setting } of plan.runs) for (const main of setting.mains) expect(owned.has(main)).toBe(true);
  for (const { sizes } of standing.dangers)
    for (const size of sizes ?? []) expect(nextSizeUp(machine, size)).toBe(size);
}

function expectReasonsThatGain({ plan }: Told): void {
  for (const { reason } of plan.swaps) if (reason.code === 'power') expect(reason.gain).toBeGreaterThan(0);
}

function expectApiSays({ standing, plan }: Told, { night, now }: Evening): void {
  const [machine] = night.machines;
  const body = planRequestSchema.parse({
    ...machine,
    event: night.event,
    hours: night.hours,
    readings: night.readings,
    now: isoUtc(now),
  });
  const series = expectOk(sharedSeries(night));
  const [answer] = expectOk(planAnswers(body, { series, clock: now, voice, warnings: [] }));
  expect(answer!.standing.inNow.setting.mains).toEqual(standing.inNow.setting.mains);
  expect(answer!.standing.job.kind).toBe(standing.job.kind);
  expect(answer!.standing.risk).toBe(riskSentence(standing));
  expect(answer!.standing.reading?.words ?? null).toBe(readingWorthSentence(standing, voice));
  expect(answer!.runs.map(({ setting, grade, leanCount }) => [setting.mains, grade, leanCount])).toEqual(
    plan.runs.map(({ setting, grade, leanCount }) => [setting.mains, grade, leanCount]),
  );
  // What comes without a time is said as of now: the API can only ask about what nobody said.
  if (standing.question !== null && night.machines[0]!.fitted === undefined)
    expect(answer!.standing.question?.to.mains).toEqual(standing.question.to.mains);
}

function expectTableSays({ plan, request }: Told): void {
  const rows = planCsv([{ name: 'Twin', plan }], { ...voice, now: request.now })
    .trim()
    .split('\r\n')
    .slice(1);
  for (const [i, run] of plan.runs.entries()) {
    if (run.state === 'beyond-hours') continue;
    expect(rows[i]).toContain(`,${run.setting.mains.join(',')},`);
    if (run.grade === 'lean') expect(rows[i]).toContain('lean');
    if (run.state === 'past') expect(rows[i]).toContain('not told');
  }
  expect(rows.length).toBe(request.runs.length);
}

function expectClubSays({ request, plan, standing }: Told): void {
  const { runs, machine, fitted, made, accepted, fittings } = request;
  const racer = { id: '1', name: 'One', boxId: '1', machine, runs, fitted, made, accepted };
  const briefing = makeBriefing([{ ...racer, ...(fittings ? { fittings } : {}) }], {
    series: request.series,
    readings: request.readings,
    now: request.now,
    options: request.options,
  });
  const [planned] = briefing.planned;
  expect(planned!.plan.runs.map(({ setting }) => jets(setting))).toEqual(
    plan.runs.map(({ setting }) => jets(setting)),
  );
  expect(planned!.standing.question).toEqual(standing.question);
  expect(planned!.standing.reading).toEqual(standing.reading);
  expect(planned!.standing.dangers.map(({ grade, why }) => [grade, why])).toEqual(
    standing.dangers.map(({ grade, why }) => [grade, why]),
  );
  expect(briefing.acts[0]?.swap.windowStart).toBe(plan.swaps[0]?.windowStart);
}

/** The calendar hears nothing back: where nobody said what is in, it counts on the accepted plan and says so. */
function expectCalendarSays({ standing, plan }: Told, { night, now }: Evening): void {
  const shared = {
    ...night,
    machines: night.machines.map((machine) => ({
      ...machine,
      accepted: settingsAsGiven(plan).map(({ mains, trim }) => ({ mains: [...mains], trim })),
    })),
  };
  const lives = livePlans(shared, { series: expectOk(sharedSeries(night)), clock: now });
  if (!lives.ok) return;
  const [live] = lives.value;
  const acts = calendarActs(live!, {
    clock: now,
    sharedAt: now,
    swapMinutes: night.event.swapMinutes,
    voice,
    hours: { from: 'link', because: 'file', told: null },
  });
  const told = acts.map(({ summary, description }) => [summary, ...description].join(' ')).join('\n');
  if (live!.standing !== null) {
    expect(told.includes('Do not race')).toBe(live!.standing.dangers.length > 0);
    if (live!.standing.dangers.length > 0) expect(told).not.toMatch(/holds (all|Round|to the end)/);
  }
  if (standing.question === null && live!.standing !== null && live!.takenToBeFitted === null)
    expect(jets(live!.standing.inNow.setting)).toBe(jets(standing.inNow.setting));
  if (live!.takenToBeFitted !== null && acts.some(({ description }) => description.length > 3))
    expect(told).toMatch(/accepted plan/);
}

describe('Whatever happened tonight', () => {
  it('plate, call, table, CSV, API, club and calendar say the same, and nothing that sends anybody out lean', () => {
    const seen = { plans: 0, questions: 0, dangers: 0, holds: 0, swaps: 0, drowned: 0 };
    fc.assert(
      fc.property(anyEvening, (given) => {
        const told = toldOf(given);
        if (told === null) return;
        seen.plans += 1;
        if (told.standing.question !== null) seen.questions += 1;
        if (told.standing.dangers.length > 0) seen.dangers += 1;
        if (told.standing.job.kind === 'hold') seen.holds += 1;
        if (told.standing.job.kind === 'swap') seen.swaps += 1;
        if (told.plan.runs.some(({ grade }) => grade === 'drowned')) seen.drowned += 1;
        expectSizesThatExist(told);
        expectNoneSentOutLean(told.standing, told.texts, told.request.machine.limits.risk);
        expectReasonsThatGain(told);
        expectTableSays(told);
        expectApiSays(told, given);
        expectClubSays(told);
        expectCalendarSays(told, given);
        for (const text of told.texts) expect(text).not.toMatch(/undefined|NaN|null/);
        expect(told.texts.join(' ')).not.toMatch(/gains −|gains 0\.0/);
        expect(settingText(told.standing.inNow.setting)).not.toBe('');
      }),
      { numRuns: Number(process.env.EVENINGS ?? 500), seed: 11 },
    );
    // The evenings reach what they are to try.
    for (const [kind, count] of Object.entries(seen)) expect(count, kind).toBeGreaterThan(5);
  }, 600_000);
});
