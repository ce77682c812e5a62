import type { Plan, Swap } from '@/lib/plan/types';

type Purpose = 'safety' | 'rich' | 'power' | 'none';

const PURPOSES: Readonly<Record<Swap['reason']['code'], Purpose>> = {
  'old-turns-lean': 'safety',
  'old-drowned': 'safety',
  'old-turns-rich': 'rich',
  power: 'power',
  'as-accepted': 'none',
};

/** What the swaps of the jets are made for, in counts; null for a single one, whose own reason says it. */
export function purposeSentence(plan: Plan): string | null {
  const purposes = plan.swaps
    .filter(({ kind }) => kind === 'jets')
    .map(({ reason }) => PURPOSES[reason.code]);
  if (purposes.length < 2) return null;
  const countOf = (purpose: Purpose) => purposes.filter((each) => each === purpose).length;
  const all = purposes.length === 2 ? 'Both' : `All ${purposes.length}`;
  if (countOf('safety') === purposes.length) return `${all} swaps are for safety; none is for power.`;
  const told = [
    `${countOf('safety') === 0 ? 'none' : countOf('safety')} for safety`,
    ...(countOf('rich') === 0 ? [] : [`${countOf('rich')} against running too rich`]),
    `${countOf('power') === 0 ? 'none' : countOf('power')} for power`,
    ...(countOf('none') === 0 ? [] : [`${countOf('none')} as accepted`]),
  ];
  return `Of ${purposes.length} swaps: ${told.join(', ')}.`;
}
