import type { Plan } from '@/lib/plan/types';
import type { OpenSwap } from '@/lib/standing/open-swap';
import type { Standing } from '@/lib/standing/standing';
import type { ClockZone } from '@/lib/time/zone';
import { shortCount } from './counts';
import { planClock, runName } from './runs';
import { settingText } from './settings';
import { clockText } from './times';

/** An accepted swap that nobody confirmed, in words. */
export type QuestionWords = {
  /** "Is 420 in?" */
  readonly ask: string;
  /** The same at a glance, for the first screen. */
  readonly short: string;
  /** What it means until it is answered. */
  readonly meaning: string;
  /** "Yes, 420 is in", or "Yes, before Round 3", one for each time it may have gone in; `at` is when it then counts from. */
  readonly yes: readonly { readonly label: string; readonly at: OpenSwap['since'] }[];
  /** "No, still 410". */
  readonly no: string;
};

export function questionWords({ question, plan, now }: Standing, zone: ClockZone): QuestionWords | null {
  if (question === null) return null;
  const { from, to, beforeRun, since, runsSince } = question;
  const clock = planClock(plan, zone);
  const [old, fresh] = [settingText(from), settingText(to)];
  const begin = `It was to go in before ${runName(plan, beforeRun)}, begun by ${clockText(since, clock)}, and nobody said that it is.`;
  const last = runsSince.at(-1);
  return {
    ask: `Is ${fresh} in?`,
    short: `Due by ${clockText(since, clock)}, not told. ${old} counts as in${shortRiskOn(plan)}.`,
    meaning: `${begin} Until you say so, ${old} counts as in${riskOn(plan)}.`,
    yes:
      last === undefined
        ? [{ label: `Yes, ${fresh} is in`, at: now }]
        : [
            { label: `Yes, before ${runName(plan, beforeRun)}`, at: since },
            { label: `Yes, after ${runName(plan, last)}`, at: now },
          ],
    no: `No, still ${old}`,
  };
}

const firstLean = (plan: Plan) =>
  plan.runs.find(({ state, ifKept }) => state === 'planned' && ifKept.grade === 'lean');

/** ": on it Round 5 has a risk of lean of 41 in 64". */
function riskOn(plan: Plan): string {
  const next = firstLean(plan);
  if (next === undefined) return '';
  return `: on it ${runName(plan, next.run)} has a risk of lean of ${shortCount(next.ifKept.leanCount)}`;
}

/** ": lean 41 in 64, Round 5". */
function shortRiskOn(plan: Plan): string {
  const next = firstLean(plan);
  if (next === undefined) return '';
  return `: lean ${shortCount(next.ifKept.leanCount)}, ${runName(plan, next.run)}`;
}
