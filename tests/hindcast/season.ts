import type { RunOutcome } from '@/tests/support/lean-runs';
import type { OtherWorld } from '@/tests/support/simulated-nights';
import { type DrawnNight, drawNight } from './draw-night';
import { leanShare, richLoss } from './perfect';
import { type Ridden, WAYS, type WayName } from './ways';

/** How a way went over a season. */
export type Score = {
  readonly runs: number;
  /** Shares of the runs that were lean in any minute, and of all minutes. */
  readonly leanRuns: number;
  readonly leanMinutes: number;
  readonly swapsPerNight: number;
  /** Mean power lost to a rich mixture. */
  readonly richLoss: number;
};

export type Season = {
  readonly scores: Readonly<Partial<Record<WayName, Score>>>;
  /** Of the plan without and with readings: what it said of each run that it took to keep the limit, and what became of it. */
  readonly outcomes: readonly RunOutcome[];
};

type Sum = { runs: number; lean: number; minutes: number; swaps: number; loss: number };

function add(sum: Sum, { machine, ideals }: DrawnNight, ridden: readonly Ridden[]): void {
  let inside = machine.carburettors.map(({ main }) => main).join();
  for (const [run, { setting }] of ridden.entries()) {
    const share = leanShare(machine, setting, ideals[run]!);
    sum.runs += 1;
    sum.minutes += share;
    if (share > 0) sum.lean += 1;
    sum.loss += richLoss(machine, setting, ideals[run]!);
    if (setting.mains.join() !== inside) sum.swaps += 1;
    inside = setting.mains.join();
  }
}

function outcomesOf({ machine, ideals }: DrawnNight, ridden: readonly Ridden[], read: boolean): RunOutcome[] {
  return ridden.flatMap(({ setting, said, temperature }, run) =>
    said === null || temperature === null || said > machine.limits.risk
      ? []
      : [{ claimed: said, lean: leanShare(machine, setting, ideals[run]!) > 0, temperature, read }],
  );
}

export const WAY_NAMES = Object.keys(WAYS) as readonly WayName[];

/** A season of as many seeded nights in a world. */
export function seasonOf(world: OtherWorld, nights: number, names: readonly WayName[] = WAY_NAMES): Season {
  const sums = new Map(names.map((name) => [name, { runs: 0, lean: 0, minutes: 0, swaps: 0, loss: 0 }]));
  const outcomes: RunOutcome[] = [];
  for (let seed = 1; seed <= nights; seed++) {
    const night = drawNight(seed, world);
    for (const name of names) {
      const ridden = WAYS[name](night);
      add(sums.get(name)!, night, ridden);
      const read = name === 'the plan, a reading before each run';
      if (read || name === 'the plan') outcomes.push(...outcomesOf(night, ridden, read));
    }
  }
  const scoreOf = (name: WayName): Score => {
    const { runs, lean, minutes, swaps, loss } = sums.get(name)!;
    return {
      runs,
      leanRuns: lean / runs,
      leanMinutes: minutes / runs,
      swapsPerNight: swaps / nights,
      richLoss: loss / runs,
    };
  };
  return {
    scores: Object.fromEntries(names.map((name) => [name, scoreOf(name)])),
    outcomes,
  };
}
