import { type Lane, laneOf } from '@/lib/carb/lane';
import type { Machine } from '@/lib/carb/machine';
import type { Crossing, Plan, PlanHour, RunPlan } from '@/lib/plan/types';
import { HOUR_MS, type Instant, instant } from '@/lib/time/instant';
import { type SunEvent, type SunPlace, sunEvents } from '@/lib/time/sun';
import { hourTicks } from '@/lib/time/zone';

/** One step of the staircase: a setting from when it is in the engine until the next swap begins. */
export type Stair = Lane & { readonly from: Instant; readonly to: Instant; readonly trim: number | null };
export type RunMark = {
  readonly name: string;
  readonly start: Instant;
  readonly end: Instant;
  readonly state: RunPlan['state'];
};
export type SwapMark = { readonly from: Instant; readonly to: Instant };

/** All that the chart and the strip draw, in times and jet sizes: nothing left to work out but pixels. */
export type Picture = {
  readonly carburettor: number;
  readonly from: Instant;
  readonly to: Instant;
  readonly least: number;
  readonly most: number;
  readonly hours: readonly PlanHour[];
  /** Every jet in the box that lies within the picture, with its lane. */
  readonly lanes: readonly Lane[];
  readonly stairs: readonly Stair[];
  readonly swaps: readonly SwapMark[];
  readonly runs: readonly RunMark[];
  readonly crossings: readonly Crossing[];
  readonly sun: readonly SunEvent[];
  readonly ticks: readonly Instant[];
};

export type PictureRequest = {
  readonly plan: Plan;
  readonly machine: Machine;
  readonly carburettor: number;
  readonly zone: string;
  readonly place: SunPlace | null;
  /** 'runs': from a little before the first run to a little after the last; 'hours': all there is. */
  readonly span: 'runs' | 'hours';
};

const AROUND_RUNS_MS = 1.5 * HOUR_MS;
/** Dusk is shown where it falls this shortly before the first run. */
const DUSK_BEFORE_MS = 3 * HOUR_MS;
const BESIDE_DUSK_MS = HOUR_MS / 3;

export function pictureOf(request: PictureRequest): Picture | null {
  const { plan, machine, carburettor, zone, place } = request;
  const span = spanOf(request);
  if (span === null) return null;
  const hours = plan.hours.filter(({ at }) => at >= span.from - HOUR_MS && at <= span.to + HOUR_MS);
  const stairs = stairsOf(plan, machine, carburettor, span);
  const sizes = machine.box.map(({ size }) => size);
  const lanes = sizes.map((size) => laneOf(machine, size, machine.trim?.baseline ?? null));
  const range = sizeRange({ hours, carburettor, stairs, sizes });
  return {
    carburettor,
    ...span,
    ...range,
    hours,
    lanes: lanes.filter(({ size }) => size >= range.least && size <= range.most),
    stairs,
    swaps: plan.swaps.map((swap) => ({ from: swap.windowStart, to: swap.latestStart })),
    runs: plan.sortedRuns.map(({ name, start, end }, i) => ({
      name,
      start,
      end,
      state: plan.runs[i]?.state ?? 'planned',
    })),
    crossings: plan.crossings.filter(({ at }) => at >= span.from && at <= span.to),
    sun: place === null ? [] : sunEvents(span, place),
    ticks: hourTicks(span, zone),
  };
}

type Span = { readonly from: Instant; readonly to: Instant };

function spanOf({ plan, span, place }: PictureRequest): Span | null {
  const [first, last] = [plan.hours[0], plan.hours[plan.hours.length - 1]];
  if (first === undefined || last === undefined || last.at <= first.at) return null;
  const start = plan.sortedRuns[0]?.start;
  const end = Math.max(...plan.sortedRuns.map((run) => run.end));
  if (span === 'hours' || start === undefined) return { from: first.at, to: last.at };
  const dusk = place === null ? null : duskBefore(start, place);
  const early = Math.min(start - AROUND_RUNS_MS, dusk === null ? start : dusk - BESIDE_DUSK_MS);
  const from = Math.max(first.at, early);
  const to = Math.min(last.at, end + AROUND_RUNS_MS);
  return from < to ? { from: instant(from), to: instant(to) } : { from: first.at, to: last.at };
}

function duskBefore(start: Instant, place: SunPlace): Instant | null {
  const before = { from: instant(start - DUSK_BEFORE_MS), to: start };
  return sunEvents(before, place).find(({ kind }) => kind === 'dusk')?.at ?? null;
}

/** A setting holds from the swap before it (or the picture's edge) to the middle of the next swap's window. */
function stairsOf(plan: Plan, machine: Machine, carburettor: number, span: Span): readonly Stair[] {
  const stepAt = (beforeRun: number): Instant | null => {
    const swap = plan.swaps.find((candidate) => candidate.beforeRun === beforeRun);
    const start = plan.sortedRuns[beforeRun]?.start;
    if (swap !== undefined) return instant((swap.windowStart + swap.latestStart) / 2);
    return start ?? null;
  };
  return plan.stints.flatMap((stint) => {
    const from = stint.firstRun === 0 ? span.from : (stepAt(stint.firstRun) ?? span.from);
    const last = plan.sortedRuns[stint.lastRun];
    const next = plan.stints.find(({ firstRun }) => firstRun > stint.lastRun);
    const to = next === undefined ? (last?.end ?? span.to) : (stepAt(next.firstRun) ?? span.to);
    const size = stint.setting.mains[carburettor];
    if (size === undefined || to <= from) return [];
    return [{ ...laneOf(machine, size, stint.setting.trim), trim: stint.setting.trim, from, to }];
  });
}

/** Share of the range. */
const ROOM_FOR_WORD = 0.12;

type RangeRequest = {
  readonly hours: readonly PlanHour[];
  readonly carburettor: number;
  readonly stairs: readonly Stair[];
  readonly sizes: readonly number[];
};

/** From just below to just above all that matters, so that the steps are as tall as they can be. */
function sizeRange({ hours, carburettor, stairs, sizes }: RangeRequest) {
  const low = hours.flatMap(({ idealLow }) => idealLow[carburettor] ?? []);
  const high = hours.flatMap(({ idealHigh }) => idealHigh[carburettor] ?? []);
  const least = Math.min(...low, ...stairs.map(({ richEdge }) => richEdge));
  const most = Math.max(...high, ...stairs.map(({ leanEdge }) => leanEdge));
  const step = smallestStep(sizes) ?? (most - least) / 4;
  // A word stands over the uppermost edge.
  return { least: least - step / 2, most: most + Math.max(step / 2, (most - least) * ROOM_FOR_WORD) };
}

function smallestStep(sizes: readonly number[]): number | null {
  const steps = sizes.slice(1).map((size, i) => size - sizes[i]!);
  return steps.length === 0 ? null : Math.min(...steps);
}
