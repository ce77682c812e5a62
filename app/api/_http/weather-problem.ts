import type { LookupProblem, WeatherProblem } from '@/lib/weather/problem';
import type { Voice } from '@/lib/words/voice';
import { lookupProblemSentence, weatherProblemSentence } from '@/lib/words/weather-problems';
import type { Problem } from './problem';

/** 503 where services fail, with when to come back; 422 where the question has no answer. */
export function weatherProblem(problem: WeatherProblem, voice: Voice): Problem {
  const detail = weatherProblemSentence(problem, voice);
  return problem.code === 'all-sources-failed'
    ? unavailable(detail, problem.retryAfterSeconds)
    : { status: 422, detail };
}

export function lookupProblem(problem: LookupProblem, voice: Voice): Problem {
  const detail = lookupProblemSentence(problem, voice);
  return problem.code === 'lookup-failed'
    ? unavailable(detail, problem.retryAfterSeconds)
    : { status: 422, detail };
}

function unavailable(detail: string, seconds: number): Problem {
  return { status: 503, detail, headers: { 'retry-after': String(Math.max(1, Math.ceil(seconds))) } };
}
