import type { ReadingDraft } from '@/lib/fields/reading/reading-rows';
import type { PlanWarning } from '@/lib/plan/types';

/**
 * The kind a questioned pressure would be ordinary as; null where another kind explains nothing. A reading is kept as
 * station pressure: one too high was a sea-level number called station, one too low a station number called otherwise.
 */
export function kindMeant(
  { pressureKind }: Pick<ReadingDraft, 'pressureKind'>,
  question: PlanWarning | null,
): Exclude<ReadingDraft['pressureKind'], 'none' | 'altimeter'> | null {
  if (question?.code !== 'reading-pressure-in-doubt') return null;
  if (question.doubt.likely === 'sea-level') return pressureKind === 'station' ? 'sea-level' : null;
  return question.difference < 0 && pressureKind !== 'station' ? 'station' : null;
}
