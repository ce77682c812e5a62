import { baselineSetting } from '@/lib/carb/baseline-setting';
import type { Machine, Setting } from '@/lib/carb/machine';
import { type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import type { Gap } from './choice';
import type { Night } from './night';
import type { PlanRequest } from './types';

/** What is done and what is still open, by sorted run. */
export type Situation = {
  /** What each past run was made with; null where the run is still to come. */
  readonly done: readonly (Setting | null)[];
  /** What is in the engine now. */
  readonly fitted: Setting;
  /** Sorted runs that are planned: still to come and covered by the hours. */
  readonly open: readonly number[];
  /** Before each open run: from when one can work on the engine, for how long, and what fits. */
  readonly gaps: readonly GapBefore[];
  /** The accepted setting of each open run; null where none was accepted. */
  readonly accepted: readonly Setting[] | null;
};

export type GapBefore = { readonly from: Instant; readonly minutes: number; readonly fits: Gap };

/** A setting with its trim said: the baseline's where it was left out, none where the machine has none. */
function completeSetting(machine: Machine, { mains, trim }: Setting): Setting {
  if (machine.trim === null) return { mains, trim: null };
  const { lowest, highest, baseline } = machine.trim;
  return { mains, trim: trim === null ? baseline : Math.min(Math.max(trim, lowest), highest) };
}

/** Past runs with what they were made with: as told, else as accepted, else with what was in before. */
function pastRuns(request: PlanRequest, night: Night) {
  const { machine, made, accepted, now } = request;
  const told = new Map(made.map(({ run, setting }) => [run, setting]));
  let current = baselineSetting(machine);
  const done = night.order.map((given, i) => {
    const setting = told.get(given);
    const past = setting !== undefined || night.sortedRuns[i]!.start < now;
    if (!past) return null;
    current = completeSetting(machine, setting ?? accepted?.[given] ?? current);
    return current;
  });
  return { done, current };
}

function gapBefore(
  request: PlanRequest,
  night: Night,
  at: { readonly run: number; readonly first: boolean },
): GapBefore {
  const { now, options } = request;
  const start = night.sortedRuns[at.run]!.start;
  const from = night.sortedRuns
    .slice(0, at.run)
    .reduce<number>((latest, { end }) => Math.max(latest, end), now);
  const minutes = (start - from) / MINUTE_MS;
  const closed = minutes < 0 || (options.oneSetting && !at.first);
  return {
    from: instant(from),
    minutes,
    fits: closed ? 'nothing' : minutes < options.swapMinutes ? 'trim' : 'swap',
  };
}

export function situationOf(request: PlanRequest, night: Night): Situation {
  const { machine, accepted } = request;
  const { done, current } = pastRuns(request, night);
  const open = night.sortedRuns.flatMap((_, run) =>
    done[run] === null && night.coverage[run] === 'covered' ? [run] : [],
  );
  const settings = open.map((run) => accepted?.[night.order[run]!]);
  return {
    done,
    fitted: completeSetting(machine, request.fitted ?? current),
    open,
    gaps: open.map((run, i) => gapBefore(request, night, { run, first: i === 0 })),
    accepted: settings.every((setting) => setting !== undefined)
      ? settings.map((setting) => completeSetting(machine, setting))
      : null,
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
    return made ?? current;
  });
}
