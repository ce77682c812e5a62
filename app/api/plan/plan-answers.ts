import type { PlanAnswer } from '@/lib/contract/plan-answer';
import { type PlacedRequest, planProblemPath, planRequestsFromJson } from '@/lib/contract/plan-from-json';
import type { PlanRequestJson } from '@/lib/contract/plan-request';
import { planAnswer } from '@/lib/contract/plan-to-json';
import type { ContractProblem } from '@/lib/contract/problem';
import type { HourSeries } from '@/lib/hours/series';
import { planMany } from '@/lib/plan/make-plan';
import type { Plan, PlanProblem } from '@/lib/plan/types';
import { fail, ok, type Result } from '@/lib/result/result';
import { standingOf } from '@/lib/standing/standing';
import type { Instant } from '@/lib/time/instant';
import { zoneName } from '@/lib/time/zone';
import { actSentences } from '@/lib/words/acts';
import { type CallVoice, callSentence } from '@/lib/words/call';
import { givenWords } from '@/lib/words/given-air';
import { standingTexts } from '@/lib/words/standing';
import { warningSentences } from '@/lib/words/warnings';

type Given = {
  readonly series: HourSeries;
  readonly clock: Instant;
  readonly voice: CallVoice;
  /** About the hours, the same for every engine. */
  readonly warnings: readonly WarningJson[];
};

type WarningJson = PlanAnswer['warnings'][number];

/** A plan in JSON for every engine of a request, in its order, or everything that keeps one of them from having a plan. */
export function planAnswers(
  body: PlanRequestJson,
  { series, clock, voice, warnings }: Given,
): Result<readonly PlanAnswer[], readonly ContractProblem[]> {
  const requests = planRequestsFromJson(body, { series, clock });
  if (!requests.ok) return requests;
  const plans = planMany(requests.value.map(({ request }) => request));
  const answers = requests.value.flatMap((placed, i) => {
    const plan = plans[i];
    return plan === undefined ? [] : [answerOne(placed, plan, { voice, warnings })];
  });
  const problems = eachOnce(answers.flatMap((answer) => (answer.ok ? [] : [answer.reason])));
  return problems.length > 0
    ? fail(problems)
    : ok(answers.flatMap((answer) => (answer.ok ? [answer.value] : [])));
}

/** What all engines have in common is said once. */
function eachOnce(problems: readonly ContractProblem[]): readonly ContractProblem[] {
  return [...new Map(problems.map((problem) => [JSON.stringify(problem), problem])).values()];
}

function answerOne(
  { request, path }: PlacedRequest,
  plan: Result<Plan, PlanProblem>,
  { voice, warnings }: { readonly voice: CallVoice; readonly warnings: readonly WarningJson[] },
): Result<PlanAnswer, ContractProblem> {
  if (!plan.ok) return fail({ path: planProblemPath(plan.reason, path), reason: plan.reason });
  const { machine, now, series } = request;
  const standing = standingOf(request, plan.value);
  return ok(
    planAnswer(standing, {
      machine: machine.name,
      zone: zoneName(voice.zone),
      now,
      source: series.source,
      call: callSentence(standing, voice),
      standing: standingTexts(standing, voice),
      swapWords: swapWords(plan.value, voice),
      hourWords: plan.value.hours.map((hour) => givenWords(hour, voice.units).from),
      warnings: [...warningSentences(plan.value, voice), ...warnings],
    }),
  );
}

function swapWords(plan: Plan, voice: CallVoice): readonly string[] {
  return actSentences(plan, voice).map(
    ({ act, where, window, begin, why, ifSkipped }) =>
      `${act} ${where} (${window}). ${begin} ${why}${ifSkipped === '' ? '' : ` ${ifSkipped}`}`,
  );
}
