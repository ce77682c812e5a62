import type { PlanRequest } from '@/lib/plan/types';
import type { AskedPlan } from './planner';

export type Planned = Awaited<AskedPlan['plan']>;

/** What is asked, to be told from another: the hours are by far the most of it, and `lib/night` hands out the same ones. */
type Question = { readonly series: PlanRequest['series']; readonly rest: string };

/** Also of a night, whatever the time. */
type TimelessRequest = Omit<PlanRequest, 'now'>;

const questionOf = (request: TimelessRequest): Question => ({
  series: request.series,
  rest: JSON.stringify({ ...request, series: null }),
});

const isSame = (a: Question, b: Question): boolean => a.series === b.series && a.rest === b.rest;

/** Whether one plan is the answer to both. */
export const asksTheSame = (a: TimelessRequest, b: TimelessRequest): boolean =>
  isSame(questionOf(a), questionOf(b));

/** The night on screen and the one before, and what leads to each of the acts that are near. */
const MOST_KEPT = 8;

/** The last answers, and the one that is sure to come. */
export function keptPlans() {
  let all: readonly (Question & { readonly plan: Planned })[] = [];
  let coming: (Question & { readonly answer: Promise<Planned> }) | null = null;
  const keptFor = (question: Question): Planned | null =>
    all.find((each) => isSame(each, question))?.plan ?? null;
  const keep = (question: Question, plan: Planned): void => {
    all = [{ ...question, plan }, ...all.filter((each) => !isSame(each, question))].slice(0, MOST_KEPT);
  };
  return {
    keep: (request: PlanRequest, plan: Planned): void => keep(questionOf(request), plan),
    /** One at a time, whose answer nobody calls off. */
    expect: (request: PlanRequest, answer: Promise<Planned>): void => {
      const one = { ...questionOf(request), answer };
      coming = one;
      const over = (plan: Planned | null): void => {
        if (plan !== null) keep(one, plan);
        if (coming === one) coming = null;
      };
      answer.then(over, () => over(null));
    },
    plan: (request: PlanRequest): Planned | null => keptFor(questionOf(request)),
    answer: (request: PlanRequest): Promise<Planned> | null => {
      const question = questionOf(request);
      const kept = keptFor(question);
      if (kept !== null) return Promise.resolve(kept);
      return coming !== null && isSame(coming, question) ? coming.answer : null;
    },
  };
}
