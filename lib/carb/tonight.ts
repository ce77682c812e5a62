import type { Air } from '@/lib/air/air';
import { logDelivered } from './drift';
import type { Machine, Setting, Tonight } from './machine';
import { logIdealArea } from './response';
import { logSizeStep } from './size-step';
import { type CylinderVerdicts, leanestVerdict } from './verdicts';

/** What was found after one run of tonight; `air` is ambient air. */
export type VerdictTonight = {
  readonly run: string;
  readonly air: Air;
  readonly setting: Setting;
  /** For each carburettor; null where nobody looked. */
  readonly verdicts: CylinderVerdicts;
  /** By how many sizes the leanest of them are off; null where only the side is known. */
  readonly sizes: number | null;
};

/** "Lean" without a number is taken as one size. */
const SIDE_ONLY_SIZES = 1;
/** More than this no plug asks for: something else is wrong. Judgement. */
const MOST_LOG_AREA = 0.12;

/**
 * A verdict is an alarm, not a statistic. Lean by n sizes on a setting: from now on n sizes more than that setting, in
 * that cylinder. Right or rich on a richer setting: no more than that setting asks for, or less by the sizes it was
 * rich. Nothing goes leaner than the baseline for a verdict of one night; what the log teaches over many is another
 * matter. null where nothing is asked for.
 *
 * @param machine as proven; what earlier verdicts of tonight asked for, where it came along with it, is gone on from
 * @param verdicts oldest first
 */
export function tonightOf(machine: Machine, verdicts: readonly VerdictTonight[]): Tonight | null {
  const { tonight, ...proven } = machine;
  let logAreas = tonight?.logAreas ?? machine.carburettors.map(() => 0);
  let run = tonight?.run ?? '';
  for (const said of verdicts) {
    const next = afterVerdict(proven, logAreas, said);
    if (next.some((log, i) => log > logAreas[i]!)) run = said.run;
    logAreas = next;
  }
  return logAreas.some((log) => log > 0) ? { logAreas, run } : null;
}

function afterVerdict(
  machine: Machine,
  before: readonly number[],
  { air, setting, verdicts, sizes }: VerdictTonight,
): readonly number[] {
  const ideal = logIdealArea(machine, air);
  const delivered = logDelivered(machine, setting);
  const leanest = leanestVerdict(verdicts);
  return before.map((asked, i) => {
    const verdict = verdicts[i] ?? null;
    if (verdict === null) return asked;
    const off = (verdict === leanest ? sizes : null) ?? SIDE_ONLY_SIZES;
    const step = logSizeStep(machine, setting.mains[i]!) * off;
    const drift = delivered[i]! - ideal;
    if (verdict === 'lean') return Math.min(Math.max(asked, drift + step), MOST_LOG_AREA);
    return Math.max(0, Math.min(asked, verdict === 'right' ? drift : drift - step));
  });
}
