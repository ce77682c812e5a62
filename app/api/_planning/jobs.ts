import { planAnswers } from '@/app/api/plan/plan-answers';
import { boardRequests } from '@/lib/board/board-requests';
import { planPosted } from '@/lib/board/plan-posted';
import { planRequestsFromJson } from '@/lib/contract/plan-from-json';
import type { ContractProblem } from '@/lib/contract/problem';
import { workOf } from '@/lib/plan/work';
import { ok, type Result } from '@/lib/result/result';
import { livePlans } from '@/lib/share/live-plans';
import { nightRequests, sharedSeries } from '@/lib/share/night-requests';

/** Something that is planned for requests: what goes in and comes out is plain data, since threads hand each other copies. */
export type Job<I extends readonly unknown[], O> = {
  readonly name: string;
  readonly work: (...input: I) => O;
  /** How much there is to do, in the units of lib/plan/work.ts; what cannot be planned takes next to nothing. */
  readonly cost: (...input: I) => number;
};

/** What any job takes beside its planning, in the same units. Measured: some milliseconds. */
const AROUND = 400_000;

/** Plans for the engines of a request, as the text that is sent: a copy of it costs next to nothing. */
export const ANSWERS: Job<Parameters<typeof planAnswers>, Result<string, readonly ContractProblem[]>> = {
  name: 'answers',
  work: (body, given) => {
    const plans = planAnswers(body, given);
    if (!plans.ok) return plans;
    return ok(JSON.stringify(body.machines === undefined ? plans.value[0] : { plans: plans.value }));
  },
  cost: (body, given) => {
    const requests = planRequestsFromJson(body, given);
    return AROUND + (requests.ok ? workOf(requests.value.map(({ request }) => request)) : 0);
  },
};

/** Plans for the machines of a shared night. */
export const LIVE: Job<Parameters<typeof livePlans>, ReturnType<typeof livePlans>> = {
  name: 'live',
  work: livePlans,
  cost: (night, { clock }) => {
    const series = sharedSeries(night);
    const requests = series.ok ? nightRequests(night, { series: series.value, now: clock }) : series;
    // Once as it was when it was shared, once as it is now.
    return AROUND + (requests.ok ? 2 * workOf(requests.value) : 0);
  },
};

/** A posted night. */
export const BOARD: Job<Parameters<typeof planPosted>, ReturnType<typeof planPosted>> = {
  name: 'board',
  work: planPosted,
  cost: (night, given) => {
    const requests = boardRequests(night, given);
    return AROUND + (requests.ok ? workOf(requests.value) : 0);
  },
};
