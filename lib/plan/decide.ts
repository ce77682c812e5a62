import type { Setting } from '@/lib/carb/machine';
import { type Candidate, candidatesFor, indexOfSetting } from './candidates';
import type { RunChoice } from './choice';
import { choiceOf } from './matrix';
import { optimise, type Solution } from './optimise';
import { noiseIn, withRoom } from './room';
import { type Situation, settingsByRun, situationOf } from './situation';
import { keepSteady, type Steady } from './steady';
import type { OpenRun } from './swaps';
import type { PlanRequest } from './types';
import { usefulCandidates } from './useful';
import type { View } from './view';

/** What was chosen, and from what. */
export type Decision = {
  readonly situation: Situation;
  readonly candidates: readonly Candidate[];
  readonly choice: RunChoice;
  readonly fresh: Solution;
  readonly steady: Steady;
  readonly open: readonly OpenRun[];
  /** By sorted run. */
  readonly settings: readonly Setting[];
};

export function decide(request: PlanRequest, view: View): Decision {
  const { machine, night, judge } = view;
  const { options } = request;
  const situation = situationOf(request, night);
  const runs = situation.open.map((run) => night.sortedRuns[run]!);
  const odds = situation.open.map((run) => view.odds[run]!);
  const rooms = situation.open.map((run) => (situation.accepted === null ? 0 : noiseIn(view, run)));
  const candidates = usefulCandidates(candidatesFor(machine, situation.fitted), {
    odds,
    judge,
    rooms,
    keep: [situation.fitted, ...(situation.accepted ?? [])],
  });
  const start = indexOfSetting(candidates, situation.fitted);
  const choice = choiceOf({ machine, judge, candidates, odds, runs, situation, start, options });
  const fresh = optimise(choice);
  const plan = situation.accepted?.map((setting) => indexOfSetting(candidates, setting)) ?? null;
  const accepted =
    plan === null
      ? null
      : {
          plan,
          choice: withRoom(choice, { judge, candidates, odds, rooms, accepted: plan }),
          reads: situation.reads,
        };
  const steady = keepSteady(choice, fresh, accepted);
  const open = situation.open.map((run, i) => ({
    run,
    timed: runs[i]!,
    setting: candidates[steady.plan[i]!]!.setting,
    gap: situation.gaps[i]!,
  }));
  return { situation, candidates, choice, fresh, steady, open, settings: settingsByRun(situation, open) };
}
