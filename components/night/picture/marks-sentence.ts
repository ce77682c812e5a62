import type { PlanHour } from '@/lib/plan/types';

type Origin = PlanHour['origin'];

const MARKS: readonly { readonly origins: readonly Origin[]; readonly words: string }[] = [
  { origins: ['typed'], words: 'squares are typed hours' },
  { origins: ['forecast'], words: 'dots are forecast' },
  { origins: ['between', 'filled'], words: 'rings were put in between' },
];

/** What the marks on the curve mean, as far as they are there. */
export function marksSentence(hours: readonly PlanHour[]): string {
  const there = MARKS.filter(({ origins }) => hours.some(({ origin }) => origins.includes(origin)));
  return there.length === 0 ? '' : `On the curve, ${there.map(({ words }) => words).join(', ')}.`;
}
