import type { Machine } from '@/lib/carb/machine';
import { formatPercent } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';
import { listing } from './listing';

/** What tonight's plugs did to the plan, stated as what it is; null where they did nothing. */
export function tonightSentence({ tonight, carburettors }: Machine): string | null {
  if (tonight === undefined) return null;
  const asked = tonight.logAreas.flatMap((log, i) => (log > 0 ? [{ log, i }] : []));
  const most = Math.max(...asked.map(({ log }) => log));
  const which =
    asked.length === carburettors.length
      ? ''
      : ` in cylinder ${listing(asked.map(({ i }) => String(i + 1)))}`;
  const run = tonight.run === '' ? 'A run of tonight' : tonight.run;
  return `${run} was logged lean${which}: planned ${formatPercent(ratio(Math.expm1(most)), 1)} richer than the baseline until a run says otherwise. It is one verdict.`;
}
