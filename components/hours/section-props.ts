import type { DraftState } from '@/components/draft/use-draft';
import type { FormState } from '@/components/draft/use-form';
import type { HoursEvent } from '@/lib/fields/hours/draft-from-hours';
import type { HoursDraft } from '@/lib/fields/hours/hours-draft';
import type { HoursReading } from '@/lib/fields/hours/read-hours';

/** What every part of the hours' form is given. */
export type HoursSectionProps = {
  readonly draft: DraftState<HoursDraft>;
  readonly form: FormState;
  readonly event: HoursEvent;
  /** What the draft says, read once for all parts; null until everything can be read. */
  readonly reading: HoursReading | null;
};
