import type { Plan, PlanWarning } from '@/lib/plan/types';
import { forecastCount } from './counts';
import { leanRuns } from './lean-runs';
import { listing } from './listing';
import { runName, runNames } from './runs';
import { atLeastText, settingText } from './settings';

type NoJet = Extract<PlanWarning, { code: 'no-jet-rich-enough' | 'no-jet-lean-enough' }>;

/** The most each carburettor asks for over several runs. */
function mostNeeded(warnings: readonly NoJet[]): string {
  const [first] = warnings;
  const sizes = (first?.neededSizes ?? []).map((_, i) =>
    Math.max(...warnings.flatMap(({ neededSizes }) => neededSizes[i] ?? [])),
  );
  return atLeastText(sizes);
}

/** What must be heard before anything else: runs that stay at risk of running lean, and what to do about it. */
export function loudSentences(plan: Plan): readonly string[] {
  return [...noJetRichEnough(plan), ...otherLeanRuns(plan)];
}

function noJetRichEnough(plan: Plan): readonly string[] {
  const warnings = plan.warnings.filter((w): w is NoJet => w.code === 'no-jet-rich-enough');
  if (warnings.length === 0) return [];
  const runs = runNames(
    plan,
    warnings.map(({ run }) => run),
  );
  const needed = mostNeeded(warnings);
  return [`No jet in the box is rich enough for ${runs}: borrow ${needed} or larger.`];
}

/** Runs that stay lean although the box holds a jet that would do: there is no time to fit it. */
function otherLeanRuns(plan: Plan): readonly string[] {
  const told = new Set(plan.warnings.flatMap((w) => (w.code === 'no-jet-rich-enough' ? [w.run] : [])));
  const left = leanRuns(plan).filter(({ run }) => !told.has(run));
  if (left.length === 0) return [];
  const runs = listing(
    left.map(
      ({ run, setting, leanCount }) =>
        `${runName(plan, run)} on ${settingText(setting)} in ${forecastCount(leanCount)}`,
    ),
  );
  const noTime = plan.warnings.some((w) => w.code === 'swap-does-not-fit');
  const next = noTime ? 'there is no gap long enough to fit a richer jet' : 'do not hold it wide open';
  return [`Danger of running lean: ${runs}; ${next}.`];
}

/**
 * Too rich in every jet owned: it costs power, it harms nothing, so it is said after the call. The needed size is the
 * leanest that is safe; a smaller one must not be suggested.
 */
export function noJetLeanEnough(plan: Plan): readonly string[] {
  const warnings = plan.warnings.filter((w): w is NoJet => w.code === 'no-jet-lean-enough');
  if (warnings.length === 0) return [];
  const runs = runNames(
    plan,
    warnings.map(({ run }) => run),
  );
  const needed = mostNeeded(warnings);
  return [
    `No jet in the box is lean enough for ${runs}: one of ${needed}, no smaller, would be; until then it runs rich, which costs power.`,
  ];
}
