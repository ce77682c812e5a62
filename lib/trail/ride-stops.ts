import type { Machine, Setting } from '@/lib/carb/machine';
import { sameMains, sameSetting } from '@/lib/carb/same-setting';
import { swapWorth } from '@/lib/carb/swap-worth';
import type { HourSeries } from '@/lib/hours/series';
import type { Plan } from '@/lib/plan/types';
import { type Ratio, ratio } from '@/lib/units/quantity';
import { withStop } from './ride';
import { planLegs, type RidePlan, type RideRequest, runsOfRide } from './ride-plan';
import { rideSeries } from './ride-series';

export type StopAct = 'swap' | 'trim';

/** One stop with one act, weighed against riding through on one setting. */
export type StopOption = {
  /** Index of the place in the ride. */
  readonly place: number;
  readonly act: StopAct;
  readonly before: Setting;
  readonly after: Setting;
  /** Power saved, as a mean over the whole ride. */
  readonly saved: Ratio;
  /**
   * `lean` and `rich`: the one setting leaves its limits and this does not. null: it saves power and nothing else, which
   * is no reason to take a carburettor apart in the snow.
   */
  readonly because: 'lean' | 'rich' | null;
};

export type StopOptions = {
  /** The best stop of each act that changes something, best first. */
  readonly options: readonly StopOption[];
  readonly swapMinutes: number;
};

/** Swaps are looked at where the ride turns most; more places than this are no use to anyone. */
const MOST_PLACES_TRIED = 6;
/** Whether a stop with a swap or a turn of the trim would keep the ride inside its limits, and where. */
export function stopOptions(request: RideRequest, one: RidePlan, swapMinutes: number): StopOptions {
  const acts: readonly StopAct[] = request.machine.trim === null ? ['swap'] : ['trim', 'swap'];
  const options = acts.flatMap((act) => {
    const tried = placesToTry(request).flatMap((place) => {
      const option = tryStop(request, one, { place, act, minutes: act === 'swap' ? swapMinutes : 1 });
      return option === null ? [] : [option];
    });
    const best = tried.sort(byWorth)[0];
    return best === undefined ? [] : [best];
  });
  return { options: options.sort(byWorth), swapMinutes };
}

const RANK = { lean: 2, rich: 1 } as const;
const rankOf = ({ because }: StopOption): number => (because === null ? 0 : RANK[because]);

function byWorth(a: StopOption, b: StopOption): number {
  return rankOf(b) - rankOf(a) || b.saved - a.saved || a.place - b.place;
}

/** Inner places with the largest change of height on either side, in order of the ride. */
function placesToTry({ ride: { stops } }: RideRequest): readonly number[] {
  const turn = (i: number) =>
    Math.max(
      Math.abs(stops[i]!.elevation - stops[i - 1]!.elevation),
      Math.abs(stops[i + 1]!.elevation - stops[i]!.elevation),
    );
  const inner = stops.slice(1, -1).map((_, i) => i + 1);
  return [...inner]
    .sort((a, b) => turn(b) - turn(a) || a - b)
    .slice(0, MOST_PLACES_TRIED)
    .sort((a, b) => a - b);
}

/** With a trim act only the jets of the one setting are in the box. */
function machineFor(machine: Machine, act: StopAct, { mains }: Setting): Machine {
  if (act === 'swap') return machine;
  const counts = new Map<number, number>();
  for (const main of mains) counts.set(main, (counts.get(main) ?? 0) + 1);
  return { ...machine, box: [...counts].map(([size, count]) => ({ size, count })) };
}

type TriedStop = { readonly place: number; readonly act: StopAct; readonly minutes: number };

function tryStop(request: RideRequest, one: RidePlan, stop: TriedStop): StopOption | null {
  const machine = machineFor(request.machine, stop.act, one.setting);
  const stopped = { ...request, machine, ride: withStop(request.ride, stop.place, stop.minutes) };
  const series = rideSeries(stopped.ride, stopped.hours, stopped.fall);
  if (!series.ok) return null;
  const before = planPart(stopped, series.value, { from: 0, to: stop.place, fitted: one.setting });
  const after = planPart(stopped, series.value, { from: stop.place, to: undefined, fitted: one.setting });
  if (before === null || after === null) return null;
  return weigh(one, { stop, before, after, ride: stopped });
}

type Part = { readonly from: number; readonly to: number | undefined; readonly fitted: Setting };

function planPart(request: RideRequest, series: HourSeries, { from, to, fitted }: Part): Plan | null {
  const runs = runsOfRide(request.ride).slice(from, to);
  // Weights are shares of the whole ride; a swap must save its worth over the part that it opens.
  const share = runs.reduce((sum, { weight }) => sum + weight, 0);
  const plan = planLegs(request, {
    series,
    runs,
    fitted,
    worthIt: ratio(swapWorth(request.machine) * share),
  });
  return plan.ok ? plan.value : null;
}

type Weighed = {
  readonly stop: TriedStop;
  readonly before: Plan;
  readonly after: Plan;
  readonly ride: RideRequest;
};

function weigh(one: RidePlan, { stop, before, after, ride }: Weighed): StopOption | null {
  const settings = [before.runs[0]!.setting, after.runs[0]!.setting] as const;
  if (sameSetting(settings[0], settings[1])) return null;
  // A swap that leaves the jets as they are is a turn of the trim, which is weighed by itself.
  if (stop.act === 'swap' && sameMains(settings[0].mains, settings[1].mains)) return null;
  const weights = runsOfRide(ride.ride).map(({ weight }) => weight);
  const parts = [...before.runs, ...after.runs];
  const changed = parts.map(({ setting }) => !sameSetting(setting, one.setting));
  const saved = weights.reduce(
    (sum, weight, i) => sum + (changed[i] ? weight * (one.plan.runs[i]!.loss - parts[i]!.loss) : 0),
    0,
  );
  const { limits } = ride.machine;
  const lean = (runs: Plan['runs']) => runs.filter(({ chanceOfLean }) => chanceOfLean > limits.risk).length;
  const rich = (runs: Plan['runs']) => runs.filter(({ chanceOfRich }) => chanceOfRich > 0.5).length;
  const because =
    lean(parts) < lean(one.plan.runs) ? 'lean' : rich(parts) < rich(one.plan.runs) ? 'rich' : null;
  return {
    place: stop.place,
    act: stop.act,
    before: settings[0],
    after: settings[1],
    saved: ratio(saved),
    because,
  };
}
