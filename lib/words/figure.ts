import { isShown } from '@/lib/night/figure';
import type { Plan, RunPlan, Swap } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import { formatTemperature } from '@/lib/units/format';
import { fractionCount, shortCount } from './counts';
import { GRADE_WORD, RUN_STATE_WORD } from './grades';
import { planClock, runName } from './runs';
import { type ActPart, actParts, settingText } from './settings';
import { clockText, windowText } from './times';
import type { Voice } from './voice';

/** A row of the figure in words: what is seen, and what is said to whoever does not see it drawn. */
export type RunRowWords = {
  readonly name: string;
  /** "19:00", and " to 19:15" after it. */
  readonly start: string;
  readonly window: string;
  readonly jets: string;
  readonly temperature: string;
  /** "lean 1/64", or what else is to be known: "made", "no hours". */
  readonly risk: string;
  /** "planned: good, risk of lean 1 in 64". */
  readonly stands: string;
};

export function runRowWords(plan: Plan, run: RunPlan, { zone, units }: Voice): RunRowWords {
  const clock = planClock(plan, zone);
  const times = plan.sortedRuns[run.run];
  const { setting, state, grade, leanCount } = run;
  const shown = isShown(run);
  return {
    name: runName(plan, run.run),
    start: times === undefined ? '' : clockText(times.start, clock),
    window: times === undefined ? '' : windowText(times.start, times.end, clock),
    jets: settingText(setting),
    temperature: shown ? formatTemperature(run.air.temperature, units) : '',
    risk: state === 'planned' ? `lean ${fractionCount(leanCount)}` : SHORT_STATE[state],
    stands: shown
      ? `${RUN_STATE_WORD[state]}: ${GRADE_WORD[grade]}, risk of lean ${shortCount(leanCount)}`
      : RUN_STATE_WORD[state],
  };
}

/** The same as RUN_STATE_WORD where there is room for a word. */
const SHORT_STATE: Readonly<Record<RunPlan['state'], string>> = {
  planned: '',
  made: 'made',
  past: 'past',
  out: 'out',
  'beyond-hours': 'no hours',
};

export type SwapRowWords = {
  /** "20:00": when it can begin, or once it is due when it has to. */
  readonly start: string;
  readonly window: string;
  readonly act: readonly ActPart[];
};

type SwapRow = { readonly swap: Swap; readonly at: Instant };

export function swapRowWords(plan: Plan, { swap, at }: SwapRow, { zone }: Pick<Voice, 'zone'>): SwapRowWords {
  const clock = planClock(plan, zone);
  return {
    start: clockText(at, clock),
    window: windowText(swap.windowStart, swap.latestStart, clock),
    act: actParts(swap.from, swap.to),
  };
}
