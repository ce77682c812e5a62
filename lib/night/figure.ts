import type { Air } from '@/lib/air/air';
import { drifts } from '@/lib/carb/drift';
import { jetArea } from '@/lib/carb/jets';
import type { Machine, Setting } from '@/lib/carb/machine';
import { swapTime } from '@/lib/plan/swap-time';
import type { Plan, PlanHour, RunPlan, Swap } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import { type Across, type PlaceAcross, placeOf } from './across';
import { type Beside, crossAt, lastOfGhost, nameShare, roomBeside } from './ghost';
import { type Segment, traced } from './trace';

/** Where a planned run stands: its dot, and how far it is likely to be off. */
export type Dot = { readonly at: PlaceAcross; readonly from: PlaceAcross; readonly to: PlaceAcross };

/** From where the old jets stand to where their likely range ends, over which limit. */
export type Cross = {
  readonly from: PlaceAcross;
  readonly to: PlaceAcross;
  readonly side: 'lean' | 'rich';
};

type Drawn = {
  /** The plan's line through this row. */
  readonly line: readonly Segment[];
  /** The line of jets that would have stayed in. */
  readonly ghost: readonly Segment[];
};

export type FigureRow =
  | (Drawn & {
      readonly kind: 'run';
      readonly run: RunPlan;
      /** null where nothing is known: the hours do not reach it, or the machine is out. */
      readonly dot: Dot | null;
      /** From where the old jets stand to where their likely range ends: the first run they are over a limit in. */
      readonly cross: Cross | null;
      /** The name of the old jets, and the room for it beside their line where that comes into this row. */
      readonly ghostName: (Beside & { readonly setting: Setting }) | null;
    })
  | (Drawn & {
      readonly kind: 'swap';
      readonly swap: Swap;
      /** When it can begin; once that is over, when it has to. */
      readonly at: Instant;
      readonly due: boolean;
    })
  | (Drawn & { readonly kind: 'now'; readonly at: Instant });

/** One night from top to bottom: a row a run, a row for each swap, one for now. Places across are shares of the width. */
export type Figure = { readonly across: Across; readonly rows: readonly FigureRow[] };

type FigureRequest = {
  readonly plan: Plan;
  readonly machine: Machine;
  readonly across: Across;
  readonly now: Instant;
};

/** A row before lines are drawn through it; `left` and `right` are where the line comes in and goes out. */
type Node =
  | { readonly kind: 'run'; readonly run: RunPlan }
  | { readonly kind: 'swap'; readonly swap: Swap; readonly at: Instant; readonly due: boolean }
  | { readonly kind: 'now'; readonly at: Instant };

export function figureOf({ plan, machine, across, now }: FigureRequest): Figure {
  const nodes = nodesOf(plan, now);
  const driftOf = (run: RunPlan) => (isShown(run) ? shownDrift(run) : null);
  const dots = plan.runs.map((run) => dotOf(plan, machine, across, run));
  const line = traced(nodes.map((node) => passage(node, plan, driftOf)).map(through(across)));
  const ghosts = plan.swaps
    .filter(({ beforeRun }) => plan.runs[beforeRun]?.state === 'planned')
    .map((swap) => ghostOf({ plan, machine, across, nodes }, swap));
  const rows = nodes.map((node, i): FigureRow => {
    const drawn = { line: line[i] ?? [], ghost: ghosts.flatMap(({ lines }) => lines[i] ?? []) };
    if (node.kind !== 'run') return { ...node, ...drawn };
    const of = ghosts.find(({ crossRun }) => crossRun === node.run.run);
    const named = ghosts.find(({ nameRun }) => nameRun === node.run.run);
    return {
      ...node,
      ...drawn,
      dot: dots[node.run.run] ?? null,
      cross: of?.cross ?? null,
      ghostName: named === undefined ? null : nameOf(named, { i, line, across }),
    };
  });
  return { across, rows };
}

/** False where the numbers of a run say nothing. */
export function isShown({ state }: RunPlan): boolean {
  return state !== 'beyond-hours' && state !== 'out';
}

/** The drift a run is drawn at: that of the carburettor furthest out on the side of its grade, as everywhere. */
const shownDrift = ({ grade, leanest, richest }: RunPlan): number =>
  grade === 'rich' || grade === 'drowned' ? richest : leanest;

/** Runs in their order, a swap before its run, and now where the clock has it; left out when the night is far away. */
function nodesOf(plan: Plan, now: Instant): readonly Node[] {
  const [first, last] = [plan.sortedRuns[0], plan.sortedRuns.at(-1)];
  const near =
    first !== undefined && last !== undefined && now >= first.start - NEAR_MS && now <= last.end + NEAR_MS;
  const toCome = plan.runs.find(({ run }) => (plan.sortedRuns[run]?.start ?? now) > now)?.run ?? null;
  const nodes = plan.runs.flatMap((run): readonly Node[] => {
    const swap = plan.swaps.find(({ beforeRun }) => beforeRun === run.run);
    const isNext = near && run.run === toCome;
    const nowNode: readonly Node[] = isNext ? [{ kind: 'now', at: now }] : [];
    const swapNode: readonly Node[] =
      swap === undefined
        ? []
        : [{ kind: 'swap', swap, ...swapTime(swap.windowStart, swap.latestStart, now) }];
    const late = swap !== undefined && now > swap.latestStart;
    return late
      ? [...swapNode, ...nowNode, { kind: 'run', run }]
      : [...nowNode, ...swapNode, { kind: 'run', run }];
  });
  return near && toCome === null ? [...nodes, { kind: 'now', at: now }] : nodes;
}

const NEAR_MS = 12 * 3_600_000;

type DriftOf = (run: RunPlan) => number | null;
/** Where a line comes into a row and goes out of it, as drifts: the same but where it steps. */
type Passage = { readonly in: number | null; readonly out: number | null } | 'between';

function passage(node: Node, plan: Plan, driftOf: DriftOf): Passage {
  if (node.kind === 'now') return 'between';
  if (node.kind === 'run') {
    const drift = driftOf(node.run);
    return { in: drift, out: drift };
  }
  const { beforeRun } = node.swap;
  const [before, after] = [plan.runs[beforeRun - 1], plan.runs[beforeRun]];
  return {
    in: before === undefined ? null : driftOf(before),
    out: after === undefined ? null : driftOf(after),
  };
}

const through = (across: Across) => (each: Passage) => {
  if (each === 'between') return each;
  const place = (drift: number | null) => (drift === null ? null : placeOf(across, drift).x);
  return { in: place(each.in), out: place(each.out) };
};

type GhostRequest = Omit<FigureRequest, 'now'> & { readonly nodes: readonly Node[] };

/** The jets that a swap takes out, had they stayed in: from the run before it on, as far as that tells something. */
function ghostOf({ plan, machine, across, nodes }: GhostRequest, swap: Swap): Ghost {
  const crossRun = crossAt(swap);
  const last = lastOfGhost(plan, swap);
  const start = swap.beforeRun - 1;
  const isIn = (run: RunPlan) => run.run >= start && run.run <= last && isShown(run);
  const driftOf: DriftOf = (run) => {
    if (!isIn(run)) return null;
    return run.run === start ? shownDrift(run) : oldDrift(machine, swap.from, run.air, swap);
  };
  const passages = nodes.map((node): Passage => {
    if (node.kind === 'run') {
      const drift = driftOf(node.run);
      // The line begins at the last dot of the old jets and has nothing above it.
      return { in: node.run.run === start ? null : drift, out: drift };
    }
    return 'between';
  });
  const at = crossRun === null ? undefined : plan.runs[crossRun];
  const drift = at === undefined ? null : driftOf(at);
  const range = at === undefined || drift === null ? null : likelyRange(plan, machine, at, [drift, drift]);
  const rich = swap.reason.code === 'old-drowned' || swap.reason.code === 'old-turns-rich';
  return {
    lines: traced(passages.map(through(across))),
    crossRun,
    cross:
      drift === null || range === null
        ? null
        : {
            from: placeOf(across, drift),
            to: placeOf(across, rich ? range[1] : range[0]),
            side: rich ? 'rich' : 'lean',
          },
    nameRun: crossRun === null ? null : Math.min(last, crossRun + 1),
    setting: swap.from,
  };
}

type Ghost = {
  readonly lines: readonly (readonly Segment[])[];
  readonly crossRun: number | null;
  readonly cross: Cross | null;
  readonly nameRun: number | null;
  readonly setting: Setting;
};
type NameRequest = {
  readonly i: number;
  readonly line: readonly (readonly Segment[])[];
  readonly across: Across;
};

/** Lines come into a row at its top, which is where the name stands: between two rows' dots and their ranges. */
function nameOf({ lines, setting }: Ghost, { i, line, across }: NameRequest) {
  const topOf = (segments: readonly Segment[] | undefined): number | null =>
    segments?.find(({ y1 }) => y1 === 0)?.x1 ?? null;
  const x = topOf(lines[i]);
  if (x === null) return null;
  return { setting, ...roomBeside({ x, line: topOf(line[i]), enough: nameShare(setting) }, across) };
}

function oldDrift(machine: Machine, setting: Setting, air: Air, { reason }: Swap): number {
  const all = drifts(machine, setting, air);
  const rich = reason.code === 'old-drowned' || reason.code === 'old-turns-rich';
  return rich ? Math.max(...all) : Math.min(...all);
}

function dotOf(plan: Plan, machine: Machine, across: Across, run: RunPlan): Dot | null {
  if (!isShown(run)) return null;
  const [least, most] = likelyRange(plan, machine, run, [run.leanest, run.richest]);
  return { at: placeOf(across, shownDrift(run)), from: placeOf(across, least), to: placeOf(across, most) };
}

/**
 * The drifts between which a run is likely to be: nine cases in ten, so that a bar out of the lean bank is a run within
 * its risk. The plan's fan holds eight in ten; on a log scale it is widened as a normal distribution is.
 */
function likelyRange(
  plan: Plan,
  machine: Machine,
  { run }: RunPlan,
  [least, most]: readonly [number, number],
): readonly [number, number] {
  const start = plan.sortedRuns[run];
  const hour = start === undefined ? undefined : nearest(plan.hours, (start.start + start.end) / 2);
  if (hour === undefined) return [least, most];
  const log = (size: number | undefined) => Math.log(jetArea(machine.marking, size ?? Number.NaN));
  const up = hour.ideal.map((ideal, i) => log(hour.idealHigh[i]) - log(ideal));
  const down = hour.ideal.map((ideal, i) => log(ideal) - log(hour.idealLow[i]));
  const shifted = (drift: number, by: number) => Math.expm1(Math.log1p(drift) + by);
  return [shifted(least, -WIDER * Math.max(...up)), shifted(most, WIDER * Math.max(...down))];
}

/** Quantiles of the standard normal distribution, 95 % over 90 %: 1.6449 / 1.2816. */
const WIDER = 1.6449 / 1.2816;

function nearest(hours: readonly PlanHour[], at: number): PlanHour | undefined {
  return hours.reduce<PlanHour | undefined>(
    (best, hour) => (best === undefined || Math.abs(hour.at - at) < Math.abs(best.at - at) ? hour : best),
    undefined,
  );
}
