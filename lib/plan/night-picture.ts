import { type Lane, laneOf } from '@/lib/carb/lane';
import type { Machine, Setting } from '@/lib/carb/machine';
import { sameSetting } from '@/lib/carb/same-setting';
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

/** The swap still to be made that a step begins with: the last one that begins within its bounds; null where none does. */
export function swapOfStair(
  { stairs, swaps }: Pick<Picture, 'stairs' | 'swaps'>,
  place: number,
): SwapMark | null {
  const within = (swap: SwapMark, { from }: Stair) => swap.from <= from && from <= swap.to;
  const swap = swaps.find((each) => stairs.findLastIndex((stair) => within(each, stair)) === place);
  return place === 0 ? null : (swap ?? null);
}

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

/** What goes in when: jets that are put in without a planned swap count from the end of the run before. */
function changesOf({ stints, swaps, sortedRuns }: Plan, begin: Instant): readonly Change[] {
  const changes: Change[] = [];
  const change = (at: Instant, setting: Setting): void => {
    const last = changes.at(-1);
    if (last === undefined || !sameSetting(last.setting, setting)) changes.push({ at, setting });
  };
  const from = stints[0]?.firstRun ?? 0;
  const to = stints.at(-1)?.lastRun ?? -1;
  for (let run = from; run <= to; run += 1) {
    const setting = stints.find(({ firstRun, lastRun }) => firstRun <= run && run <= lastRun)?.setting;
    if (setting === undefined) continue;
    const swap = swaps.find(({ beforeRun }) => beforeRun === run);
    const before = sortedRuns[run - 1]?.end ?? begin;
    const start = swap === undefined ? before : instant((swap.windowStart + swap.latestStart) / 2);
    // What comes out may never have been run on: it too went in.
    if (swap !== undefined) change(instant(Math.min(before, swap.windowStart)), swap.from);
    change(start, setting);
  }
  return changes;
}

type Change = { readonly at: Instant; readonly setting: Setting };

/** A setting holds from its change (or the picture's edge) to the next, or to the end of the last run. */
function stairsOf(plan: Plan, machine: Machine, carburettor: number, span: Span): readonly Stair[] {
  const changes = changesOf(plan, span.from);
  const end = plan.sortedRuns[plan.stints.at(-1)?.lastRun ?? -1]?.end ?? span.to;
  return changes.flatMap(({ at, setting: { mains, trim } }, i) => {
    const from = instant(Math.max(at, span.from));
    const to = changes[i + 1]?.at ?? end;
    const size = mains[carburettor];
    if (size === undefined || to <= from) return [];
    return [{ ...laneOf(machine, size, trim), trim, from, to }];
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
