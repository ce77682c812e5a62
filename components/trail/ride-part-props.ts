import type { FieldErrors } from '@/components/draft/field-reader';
import type { Part } from '@/components/draft/part';
import type { DraftState } from '@/components/draft/use-draft';
import type { RideDraft, TrailDraft } from './trail-draft';

/** What every group of the ride's fields works on. */
export type RidePartProps = {
  readonly ride: Part<RideDraft>;
  readonly draft: DraftState<TrailDraft>;
  readonly errors: FieldErrors;
};
