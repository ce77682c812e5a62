import { beforeAll, describe, expect, it } from 'vitest';
import { logDelivered } from '@/lib/carb/drift';
import { stretchesOf } from '@/lib/plan/crossings';
import { meanLogIdeal } from '@/lib/plan/machine-need';
import { makePlan } from '@/lib/plan/make-plan';
import { prepareNight } from '@/lib/plan/night';
import type { Crossing, Plan } from '@/lib/plan/types';
import { viewOf } from '@/lib/plan/view';
import { expectOk } from '@/lib/result/result';
import { wasLean } from '@/tests/support/lean-runs';
import { type SimulatedNight, simulatedNight, type TrueNight } from '@/tests/support/simulated-nights';

const NIGHTS = 2000;

type Tally = { runs: number; lean: number; claimed: number };

/** When the truth passed a threshold within a stretch: the first time up, or the last time down. */
function truePassage(
  truth: TrueNight,
  stretch: { readonly from: number; readonly to: number; readonly rising: boolean },
  threshold: number,
): number {
  const inside = [...truth.at.keys()].filter(
    (i) => truth.at[i]! >= stretch.from && truth.at[i]! <= stretch.to,
  );
  const above = inside.filter((i) => truth.ideal[i]! > threshold);
  const edge = stretch.rising ? inside[0]! : inside.at(-1)!;
  if (above.includes(edge)) return stretch.rising ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  const reached = stretch.rising ? above[0] : above.at(-1);
  if (reached === undefined) return stretch.rising ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  const other = inside[inside.indexOf(reached) + (stretch.rising ? -1 : 1)]!;
  const share = (threshold - truth.ideal[other]!) / (truth.ideal[reached]! - truth.ideal[other]!);
  return truth.at[other]! + share * (truth.at[reached]! - truth.at[other]!);
}

type Range = {
  readonly crossing: Crossing;
  readonly truly: number;
  /** No earliest: in over one draw in ten it had passed when the stretch began. */
  readonly openStart: boolean;
};

/** Every crossing of a night, of the baseline and of each jet that is swapped out, with what became of it. */
function rangesOf({ request, truth }: SimulatedNight, plan: Plan): readonly Range[] {
  const { machine } = request;
  const night = prepareNight(request);
  const { need, breathed, crossingsOf } = viewOf(machine, night);
  const { at } = night.grid;
  const stretches = stretchesOf(meanLogIdeal(need, breathed.grid)).map(({ from, to, rising }) => ({
    from: at[from]!,
    to: at[to]!,
    rising,
  }));
  const swappedOut = plan.swaps
    .map(({ from }) => from)
    .filter(({ mains }) => mains[0] !== plan.baseline.mains[0]);
  const stated = [plan.baseline, ...swappedOut].flatMap((setting) =>
    crossingsOf(setting).map((crossing) => ({ crossing, setting })),
  );
  return stated.map(({ crossing, setting }) => {
    const delivered = logDelivered(machine, setting);
    const within = stretches.filter(({ from, to }) => crossing.at >= from && crossing.at <= to);
    const stretch = within.find(({ rising }) =>
      crossing.to === 'lean' ? rising : crossing.to === 'rich' ? !rising : true,
    )!;
    const leanSide = crossing.to === 'lean' || (crossing.to === 'right' && !stretch.rising);
    const threshold = leanSide
      ? Math.min(...delivered) - Math.log(1 - machine.limits.lean)
      : Math.max(...delivered) - Math.log(1 + machine.limits.rich);
    return {
      crossing,
      truly: truePassage(truth, stretch, threshold),
      openStart: crossing.earliest === stretch.from,
    };
  });
}

function share(of: readonly Range[], counts: (range: Range) => boolean): number {
  return of.filter(counts).length / of.length;
}

describe('In 2,000 simulated nights', () => {
  let nights: readonly SimulatedNight[] = [];
  let plans: readonly Plan[] = [];
  beforeAll(() => {
    nights = Array.from({ length: NIGHTS }, (_, i) => simulatedNight(i + 1));
    plans = nights.map(({ request }) => expectOk(makePlan(request)));
  }, 120_000);

  it('runs called at most 5 % lean are lean in at most 5 %, and chances of every size come true', () => {
    const edges = [0, 0.01, 0.02, 0.03, 0.05, 1];
    const tallies = edges.slice(1).map((): Tally => ({ runs: 0, lean: 0, claimed: 0 }));
    for (const [i, plan] of plans.entries())
      for (const { run, chanceOfLean } of plan.runs) {
        const tally = tallies[Math.max(0, edges.findIndex((edge) => chanceOfLean <= edge) - 1)]!;
        tally.runs += 1;
        tally.claimed += chanceOfLean;
        if (wasLean(nights[i]!, plan, run)) tally.lean += 1;
      }
    const safe = tallies.slice(0, 4);
    const runs = safe.reduce((n, each) => n + each.runs, 0);
    const lean = safe.reduce((n, each) => n + each.lean, 0);
    expect(runs).toBeGreaterThan(15_000);
    expect(lean / runs).toBeLessThanOrEqual(0.05);
    for (const each of safe) {
      const expected = each.claimed / each.runs;
      const were = each.lean / each.runs;
      // Runs of one night share their weather: about four count as one, so three standard errors are twice as wide.
      const error = 6 * Math.sqrt((expected * (1 - expected)) / each.runs);
      expect(Math.abs(were - expected), `${each.runs} runs, claimed ${expected}, were ${were}`).toBeLessThan(
        error,
      );
    }
  });

  it('a crossing lies within its stated 80 % range in 75 to 85 % of cases, and one in ten on either side', () => {
    const ranges = nights.flatMap((night, i) => rangesOf(night, plans[i]!));
    const closed = ranges.filter(({ crossing, openStart }) => crossing.latest !== null && !openStart);
    expect(closed.length).toBeGreaterThan(250);
    const held = share(
      closed,
      ({ crossing, truly }) => truly >= crossing.earliest && truly <= crossing.latest!,
    );
    expect(held, `of ${closed.length}`).toBeGreaterThan(0.75);
    expect(held, `of ${closed.length}`).toBeLessThan(0.85);
    const started = ranges.filter(({ openStart }) => !openStart);
    const ended = ranges.filter(({ crossing }) => crossing.latest !== null);
    const early = share(started, ({ crossing, truly }) => truly < crossing.earliest);
    const late = share(ended, ({ crossing, truly }) => truly > crossing.latest!);
    // A night's crossings share its weather, about two to a night: three standard errors are wider by the root of 2.
    const error = (count: number) => 3 * Math.sqrt((2 * 0.1 * 0.9) / count);
    expect(Math.abs(early - 0.1), `${early} of ${started.length}`).toBeLessThan(error(started.length));
    expect(Math.abs(late - 0.1), `${late} of ${ended.length}`).toBeLessThan(error(ended.length));
  }, 60_000);
});
