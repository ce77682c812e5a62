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

/** The same at a glance, for the first screen: "Do not race Round 5 on 410: lean 63 in 64. Ask to start later." */
export function dangerLine(dangers: readonly Danger[], plan: Plan): string {
  return dangers
    .map((danger) => `Do not race ${namesOf(danger, plan)} on ${settingsOf(danger)}: ${pointOf(danger)}`)
    .join(' ');
}

/** What is left to do, at the track, below the jets in now; so it names the runs it is about: the whole of it stands on the page of the whole night. */
export function dangerAtTrack(dangers: readonly Danger[], plan: Plan): string {
  return `Sit ${namesOf({ runs: dangers.flatMap(({ runs }) => runs) }, plan)} out.`;
}

/** The same below "Do not race on 410": "Rounds 5 to 8: lean up to 63 in 64. Borrow 430." */
export function dangerPoints(dangers: readonly Danger[], plan: Plan): readonly string[] {
  return dangers.map((danger) => `${namesOf(danger, plan)}: ${pointOf(danger)}`);
}

function pointOf(danger: Danger): string {
  const { grade, why, sizes } = danger;
  const how = grade === 'lean' ? `lean ${worstCount(danger)}` : 'too rich to run';
  if (why === 'no-time') return `${how}. Ask to start later.`;
  return sizes === null ? `${how}. No jet will do.` : `${how}. Borrow ${jetsText(sizes)}.`;
}

const namesOf = ({ runs }: Pick<Danger, 'runs'>, plan: Plan): string =>
  runNames(
    plan,
    runs.map(({ run }) => run),
  );

const settingsOf = ({ runs }: Danger): string =>
  [...new Set(runs.map(({ setting }) => settingText(setting)))].join(', then ');

/** "12 in 64", or of several runs "up to 63 in 64". */
function worstCount({ runs: [first, ...rest] }: Danger): string {
  if (first === undefined) return '';
  const worst = rest.reduce((a, b) => (b.leanCount.lean > a.leanCount.lean ? b : a), first);
  return `${rest.length > 0 ? 'up to ' : ''}${shortCount(worst.leanCount)}`;
}

/** "Do not race Rounds 5 to 8 on 410: risk of lean up to 63 in 64." */
function doNotRace(danger: Danger, plan: Plan): string {
  const how =
    danger.grade === 'lean'
      ? `risk of lean ${worstCount(danger)}`
      : `so rich that it loses over ${formatPercent(ratio(MOST_LOSS_THAT_RUNS), 0)} of its power and may not run at all`;
  return `Do not race ${namesOf(danger, plan)} on ${settingsOf(danger)}: ${how}.`;
}

const themOf = ({ runs }: Danger): string => (runs.length === 1 ? 'it' : 'them');

function whyText(danger: Danger): string {
  const { grade, why, sizes } = danger;
  if (why === 'no-time')
    return `A ${grade === 'lean' ? 'richer' : 'leaner'} jet is in the box, but no gap before ${themOf(danger)} is long enough to put it in.`;
  return sizes === null
    ? 'No jet in the box will do, and your list of jets has none that would.'
    : `No jet in the box will do: borrow ${jetsText(sizes)}.`;
}

function whatHelps(danger: Danger): string {
  const { grade, why, runs } = danger;
  const wait =
    why === 'no-time'
      ? `Ask for a later start, or sit ${themOf(danger)} out.`
      : `Without it sit ${runs.length === 1 ? 'the run' : 'them'} out.`;
  return grade === 'lean' ? `${wait} If you must move, lift early and never hold it wide open.` : wait;
}
