import type { Instant } from '@/lib/time/instant';
import type { AnswerProblem } from '@/lib/weather/problem';

/** What a check finds: the whole answer is wrong, or some of its hours are. */
export type Finding =
  | { readonly kind: 'answer'; readonly problem: AnswerProblem }
  | { readonly kind: 'hours'; readonly at: readonly Instant[] };

export const NOTHING: Finding = { kind: 'hours', at: [] };

export function whole(problem: AnswerProblem): Finding {
  return { kind: 'answer', problem };
}
