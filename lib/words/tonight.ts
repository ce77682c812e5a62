import type { Machine } from '@/lib/carb/machine';
import type { LogRecord } from '@/lib/store/records';
import { formatPercent } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';
import { listing } from './listing';
import { verdictText } from './log';
import { settingText } from './settings';

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

/**
 * What the lean verdicts of a night come to by now, for whoever logged one: what the plan does about it, and how a later
 * run counts. Empty where no run was lean.
 *
 * @param log entries of this machine at this event, in any order
 */
export function tonightLines(machine: Machine, log: readonly LogRecord[]): readonly string[] {
  const told = log
    .filter(({ verdict }) => verdict !== null)
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
  const lastLean = told.findLastIndex(({ verdict }) => verdict === 'lean');
  const lean = told[lastLean];
  if (lean === undefined) return [];
  const since = told.slice(lastLean + 1).at(-1);
  const sentence = tonightSentence(machine);
  if (sentence !== null)
    return since === undefined ? [sentence] : [sentence, `${toldOf(since)}: that is counted in.`];
  return since === undefined
    ? [
        `${toldOf(lean)}. The plan is as rich as the baseline and no richer: read the plugs before you trust it.`,
      ]
    : [`${toldOf(since)}: the plan goes by the baseline again.`];
}

function toldOf(entry: LogRecord): string {
  const run = entry.run === '' ? 'A run of tonight' : entry.run;
  return `${run} was logged ${verdictText(entry)} on ${settingText(entry.setting)}`;
}
