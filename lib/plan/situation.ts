import { baselineSetting } from '@/lib/carb/baseline-setting';
import type { Machine, Setting } from '@/lib/carb/machine';
import { type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import type { Gap } from './choice';
import type { PreparedNight } from './night';
import type { InNow, PlanRequest } from './types';

/** A run that is past, with what it was made on; `told`: somebody said so. */
export type PastRun = { readonly setting: Setting; readonly told: boolean };

/** True where the machine does not make a run. */
export function isOut({ outFrom }: Pick<PlanRequest, 'outFrom'>, start: Instant): boolean {
  return outFrom !== undefined && start >= outFrom;
}

/** What is done and what is still open, by sorted run. */
export type Situation = {
  /** null where the run is still to come. */
  readonly done: readonly (PastRun | null)[];
  /** What is in the engine now, and how that is known. */
  readonly inNow: InNow;
  /** The setting of `inNow`. */
  readonly fitted: Setting;
  /** Sorted runs the machine does not make. */
  readonly out: readonly number[];
  /** Sorted runs that are planned: still to come and covered by the hours. */
  readonly open: readonly number[];
  /** Before each open run: from when one can work on the engine, for how long, and what fits. */
  readonly gaps: readonly GapBefore[];
  /** The accepted setting of each open run; null where none was accepted. */
  readonly accepted: readonly Setting[] | null;
  /** Somebody reads the thermometer at the track: before a later change they will know more than now. */
  readonly reads: boolean;
};

export type GapBefore = { readonly from: Instant; readonly minutes: number; readonly fits: Gap };

/** A setting with its trim said: the baseline's where it was left out, none where the machine has none. */
export function completeSetting(machine: Machine, { mains, trim }: Setting): Setting {
  if (machine.trim === null) return { mains, trim: null };
  const { lowest, highest, baseline } = machine.trim;
  return { mains, trim: trim === null ? baseline : Math.min(Math.max(trim, lowest), highest) };
}

/**
 * Past runs with what they were made on, as told. Where nobody said, it is what was last said to be in: a plan that was
 * accepted and not confirmed is no witness.
 */
function pastRuns(request: PlanRequest, night: PreparedNight) {
  const { machine, made, fittings = [], now } = request;
  const told = new Map(made.map(({ run, setting }) => [run, setting]));
  let current: InNow = { setting: baselineSetting(machine), known: 'baseline' };
  let heardTo = Number.NEGATIVE_INFINITY;
  const done = night.order.map((given, i): PastRun | null => {
    const setting = told.get(given);
    const { start } = night.sortedRuns[i]!;
    if (setting === undefined && (start >= now || isOut(request, start))) return null;
    const said = setting ?? fittings.findLast(({ at }) => at > heardTo && at <= start)?.setting;
    if (said !== undefined) current = { setting: completeSetting(machine, said), known: 'told' };
    heardTo = start;
    return { setting: current.setting, told: setting !== undefined };
  });
  return { done, current };
}

/** The gap before each open run: from now, or from when the last of all runs before it ends. */
function gapsBefore(
  { now, options }: PlanRequest,
  { sortedRuns }: PreparedNight,
  open: readonly number[],
): readonly GapBefore[] {
  let from: number = now;
  let before = 0;
  return open.map((run, i) => {
    for (; before < run; before++) from = Math.max(from, sortedRuns[before]!.end);
    const minutes = (sortedRuns[run]!.start - from) / MINUTE_MS;
    const closed = minutes < 0 || (options.oneSetting && i > 0);
    return {
      from: instant(from),
      minutes,
      fits: closed ? 'nothing' : minutes < options.swapMinutes ? 'trim' : 'swap',
    };
  });
}

export function situationOf(request: PlanRequest, night: PreparedNight): Situation {
  const { machine, accepted } = request;
  const { done, current } = pastRuns(request, night);
  const inNow: InNow =
    request.fitted === null ? current : { setting: completeSetting(machine, request.fitted), known: 'told' };
  const open = night.sortedRuns.flatMap((_, run) =>
    done[run] === null && night.coverage[run] === 'covered' && !isOut(request, night.sortedRuns[run]!.start)
      ? [run]
      : [],
  );
  const settings = open.map((run) => accepted?.[night.order[run]!]);
  return {
    done,
    inNow,
    fitted: inNow.setting,
    out: night.sortedRuns.flatMap(({ start }, run) =>
      done[run] === null && isOut(request, start) ? [run] : [],
    ),
    open,
    gaps: gapsBefore(request, night, open),
    accepted: settings.every((setting) => setting !== undefined)
      ? settings.map((setting) => completeSetting(machine, setting))
      : null,
    reads: night.corrected.temperatureReadAt !== null && !request.options.oneSetting,
  };
}

/** The setting of every sorted run: as made, as planned, and where neither is known what was in before. */
export function settingsByRun(
  { done, fitted }: Pick<Situation, 'done' | 'fitted'>,
  open: readonly { readonly run: number; readonly setting: Setting }[],
): readonly Setting[] {
  const planned = new Map(open.map(({ run, setting }) => [run, setting]));
  let current = fitted;
  return done.map((made, run) => {
    const setting = planned.get(run);
    if (setting !== undefined) current = setting;
    return made?.setting ?? current;
  });
}
