import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { baselineSetting } from '@/lib/carb/baseline-setting';
import { sameSetting } from '@/lib/carb/same-setting';
import { completeSetting } from '@/lib/plan/situation';
import { expectOk } from '@/lib/result/result';
import { isDangerous } from '@/lib/standing/danger';
import type { Standing } from '@/lib/standing/standing';
import { addMinutes } from '@/lib/time/instant';
import { METRIC_UNITS } from '@/lib/units/choice';
import { anySteps, type Heard, nothingHeard, type Step } from '@/tests/support/evening-steps';
import { expectNoneSentOutLean, saidTexts } from '@/tests/support/said-texts';
import { standNight } from '@/tests/support/stand-night';
import { type EveningStart, WalkedEvening } from '@/tests/support/walked-evening';

const voice = { zone: 'America/Chicago', units: METRIC_UNITS };
type Shown = ReturnType<WalkedEvening['shown']>;

const boxOf = (...sizes: readonly number[]) => sizes.map((size) => ({ size, count: 3 }));
const anyStart: fc.Arbitrary<EveningStart> = fc.record({
  machine: fc.constantFrom<EveningStart['machine']>(
    {},
    { box: boxOf(400, 410) },
    { box: boxOf(400, 410, 420, 800) },
    { carburettors: [{ main: 410 }], box: boxOf(390, 400, 410, 420, 430) },
    {
      carburettors: [{ main: 410 }],
      box: boxOf(400, 410, 420),
      trim: { lowest: 1, highest: 4, baseline: 2, percentPerPosition: 1 },
    },
  ),
  colder: fc.constantFrom(-3, 0, 0, 5, 12),
});

/** Minutes between a plan that was accepted and the first word of anybody; 0: nothing was accepted. */
const anyMissed = fc.constantFrom(0, 0, 150, 240);

/** What is in is the last thing that was told, and no run was made on what nobody said. */
function expectOnlyWhatWasSaid(
  { night, standing }: Shown,
  { said, settings }: Heard,
  made: Shown['night']['request']['made'],
) {
  const { machine } = night;
  const { plan, inNow } = standing;
  const heard = said.inNow === null ? baselineSetting(machine) : completeSetting(machine, said.inNow);
  expect(inNow).toEqual({ setting: heard, known: said.inNow === null ? 'baseline' : 'told' });
  expect(new Map(made.map(({ run, setting }) => [run, setting]))).toEqual(said.made);
  const known = [baselineSetting(machine), ...settings.map((each) => completeSetting(machine, each))];
  for (const { state, setting, run } of plan.runs) {
    if (state === 'made') expect(said.made.get(plan.order[run]!)).toEqual(setting);
    if (state === 'past') expect(known.some((each) => sameSetting(each, setting))).toBe(true);
  }
  if (said.out) expect(plan.runs.some(({ state }) => state === 'planned')).toBe(false);
}

/** A plan that was accepted changes what is asked and what is kept, and makes nothing look safer. */
function expectNoSaferForAccepting({ night, standing }: Shown): void {
  // Where nothing is accepted it would be the same plan made twice.
  if (night.request.accepted === null) return;
  const request = { ...night.request, accepted: null };
  const without = expectOk(standNight({ ...night, request }, standing.now));
  expect(standing.inNow).toEqual(without.inNow);
  expect(standing.mixture).toEqual(without.mixture);
  for (const [i, run] of standing.plan.runs.entries())
    expect(run.ifKept).toEqual(without.plan.runs[i]!.ifKept);
  const dangerous = (each: Standing) => each.plan.runs.filter(isDangerous).length;
  expect(dangerous(standing)).toBeGreaterThanOrEqual(dangerous(without));
}

/** The accepted swap of the stint that the last run belongs to, where it is not in and nobody said anything since. */
function expectAskedWhereMissed({ night, standing }: Shown, { said }: Heard): void {
  const { accepted, outFrom } = night.request;
  const { plan, now, inNow, question } = standing;
  if (accepted === null) {
    expect(question).toBeNull();
    return;
  }
  const wanted = plan.order.map((given) => completeSetting(night.machine, accepted[given]!));
  const swapMinutes = night.request.options.swapMinutes;
  const last = plan.sortedRuns.findLastIndex(({ start }) => start <= now);
  const soon = plan.sortedRuns[last + 1];
  if (last === -1 || (soon !== undefined && addMinutes(soon.start, -swapMinutes) <= now)) return;
  const want = wanted[last]!;
  if (outFrom !== undefined && plan.sortedRuns[last]!.start >= outFrom) return;
  const first = 1 + wanted.findLastIndex((setting, run) => run < last && !sameSetting(setting, want));
  const due = addMinutes(plan.sortedRuns[first]!.start, -swapMinutes);
  const saidOtherwise = plan.runs.some(
    ({ run, state, setting }) => run >= first && state === 'made' && !sameSetting(setting, want),
  );
  if (sameSetting(want, inNow.setting) || said.at >= due || saidOtherwise) return;
  expect(question).toMatchObject({ from: inNow.setting, to: want, beforeRun: first });
}

/** Nobody is asked about a swap for a run that the machine does not make. */
function expectNotAskedWhenOut({ night, standing: { plan, question } }: Shown): void {
  const { outFrom } = night.request;
  if (question === null || outFrom === undefined) return;
  expect(plan.sortedRuns[question.beforeRun]!.start).toBeLessThan(outFrom);
}

async function expectTrue(evening: WalkedEvening, heard: Heard): Promise<Shown> {
  await evening.look(0);
  const shown = evening.shown(0);
  const { standing, night } = shown;
  const texts = saidTexts(standing, voice);
  expectOnlyWhatWasSaid(shown, heard, night.request.made);
  expectNoneSentOutLean(standing, texts, night.machine.limits.risk);
  expectNoSaferForAccepting(shown);
  expectAskedWhereMissed(shown, heard);
  expectNotAskedWhenOut(shown);
  for (const text of texts) expect(text).not.toMatch(/undefined|NaN|null/);
  const { job } = standing;
  if (job.kind === 'swap' && standing.now < addMinutes(job.swap.windowStart, -30))
    expect(job.canBeDone).toBe(false);
  return shown;
}

describe('An evening as it happens', () => {
  it('is never told safer than it is, whatever is said, missed, moved, taken back or shared', async () => {
    const seen = { questions: 0, dangers: 0, holds: 0, swaps: 0, out: 0, tonight: 0 };
    const count = ({ standing: { question, dangers, job }, night }: Shown) => {
      if (question !== null) seen.questions += 1;
      if (dangers.length > 0) seen.dangers += 1;
      if (job.kind === 'hold') seen.holds += 1;
      if (job.kind === 'swap') seen.swaps += 1;
      if (job.kind === 'out') seen.out += 1;
      if (night.machine.tonight !== undefined) seen.tonight += 1;
    };
    /** The step, and all that must be true after it. */
    const checked = (step: Step): Step => ({
      check: (heard) => step.check(heard),
      toString: () => step.toString(),
      run: async (heard, evening) => {
        await step.run(heard, evening);
        count(await expectTrue(evening, heard));
      },
    });
    await fc.assert(
      fc.asyncProperty(anyStart, anyMissed, anySteps, async (start, missed, steps) => {
        const evening = await WalkedEvening.start(start);
        if (missed > 0) await evening.press(0, (acts) => acts.accept());
        evening.wait(missed);
        await fc.asyncModelRun(() => ({ model: nothingHeard(), real: evening }), [...steps].map(checked));
        evening.close();
      }),
      { numRuns: Number(process.env.WALKS ?? 100), seed: 11 },
    );
    // The walks reach what they are to try.
    for (const [kind, times] of Object.entries(seen)) expect(times, kind).toBeGreaterThan(5);
  }, 180_000);
});
