import type { DriftState, RunGrade, RunPlan } from '@/lib/plan/types';
import { formatSignedPercent } from '@/lib/units/format';
import type { Ratio } from '@/lib/units/quantity';

/** How a run stands on its jets, in a word. */
export const GRADE_WORD: Readonly<Record<RunGrade, string>> = {
  good: 'good',
  rich: 'rich',
  lean: 'lean',
  drowned: 'too rich to run',
};

/** How jets stand in the air, in a word. Not "right": at a glance it reads like "rich". */
export const STATE_WORD: Readonly<Record<DriftState, string>> = { lean: 'lean', right: 'good', rich: 'rich' };

/** The side of the baseline a grade stands on. */
export const GRADE_SIDE: Readonly<Record<RunGrade, DriftState>> = {
  good: 'right',
  rich: 'rich',
  lean: 'lean',
  drowned: 'rich',
};

/** Whether a run is to come, and how it is known what it was made on. */
export const RUN_STATE_WORD: Readonly<Record<RunPlan['state'], string>> = {
  made: 'made',
  past: 'past, jets not told',
  planned: 'planned',
  out: 'out',
  'beyond-hours': 'no hours',
};

/** "-1.2 %, good": the number never stands without its word. */
export function driftText(drift: Ratio, state: DriftState): string {
  return `${formatSignedPercent(drift, 1)}, ${STATE_WORD[state]}`;
}
