import { MOST_LOSS_THAT_RUNS } from '@/lib/plan/judgement';
import type { Plan } from '@/lib/plan/types';
import type { Danger } from '@/lib/standing/danger';
import { formatPercent } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';
import { shortCount } from './counts';
import { runNames } from './runs';
import { jetsText, settingText } from './settings';

/** What must be heard before anything else: what not to race on, in which runs, what to borrow, what helps meanwhile. */
export function dangerSentences(dangers: readonly Danger[], plan: Plan): readonly string[] {
  return dangers.map((danger) =>
    [doNotRace(danger, plan), whyText(danger), whatHelps(danger)].filter((part) => part !== '').join(' '),
  );
}

/** The same at a glance, for the first screen: what not to race on, and the one thing that helps. */
export function dangerLine(dangers: readonly Danger[], plan: Plan): string {
  return dangers.map((danger) => `${doNotRace(danger, plan)} ${remedy(danger)}`).join(' ');
}

function remedy({ why, sizes }: Danger): string {
  if (why === 'no-time') return 'Ask for a later start.';
  return sizes === null ? 'No jet will do.' : `Borrow ${jetsText(sizes)}.`;
}

/** "Do not race Round 5 to Round 8 on 410: risk of lean up to 63 in 64." */
function doNotRace({ grade, runs }: Danger, plan: Plan): string {
  const settings = [...new Set(runs.map(({ setting }) => settingText(setting)))].join(', then ');
  const names = runNames(
    plan,
    runs.map(({ run }) => run),
  );
  const [first, ...rest] = runs;
  if (first === undefined) return '';
  const worst = rest.reduce((a, b) => (b.leanCount.lean > a.leanCount.lean ? b : a), first);
  const how =
    grade === 'lean'
      ? `risk of lean ${rest.length > 0 ? 'up to ' : ''}${shortCount(worst.leanCount)}`
      : `so rich that it loses over ${formatPercent(ratio(MOST_LOSS_THAT_RUNS), 0)} of its power and may not run at all`;
  return `Do not race ${names} on ${settings}: ${how}.`;
}

function whyText({ grade, why, sizes }: Danger): string {
  if (why === 'no-time')
    return `A ${grade === 'lean' ? 'richer' : 'leaner'} jet is in the box, but no gap before it is long enough to put it in.`;
  return sizes === null
    ? 'No jet in the box will do, and your list of jets has none that would.'
    : `No jet in the box will do: borrow ${jetsText(sizes)}.`;
}

function whatHelps({ grade, why }: Danger): string {
  const wait = why === 'no-time' ? 'Ask for a later start, or sit it out.' : 'Without it sit them out.';
  return grade === 'lean' ? `${wait} If you must move, lift early and never hold it wide open.` : wait;
}
