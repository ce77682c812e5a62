import type { PlanHour } from '@/lib/plan/types';

type Origin = PlanHour['origin'];

const MARKS: readonly { readonly origins: readonly Origin[]; readonly words: string }[] = [
  { origins: ['typed'], words: 'squares are typed hours' },
  { origins: ['forecast'], words: 'dots are forecast hours' },
  { origins: ['between', 'filled'], words: 'rings were put in between' },
];

/** Least step of temperature that is shown [K]. */
const SEEN = 0.05;

/** What the marks on the curve mean, as far as they are there. */
export function marksSentence(hours: readonly PlanHour[]): string {
  const there = MARKS.filter(({ origins }) => hours.some(({ origin }) => origins.includes(origin)));
  const moved = hours.some(({ air, given }) => Math.abs(air.temperature - given.temperature) > SEEN);
  const by = moved ? ', each as the readings moved it' : '';
  return there.length === 0 ? '' : `On the curve, ${there.map(({ words }) => words).join(', ')}${by}.`;
}
