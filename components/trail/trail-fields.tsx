import { type FieldsOf, fieldsOf } from '@/components/draft/fields-of';
import type { DraftState } from '@/components/draft/use-draft';
import type { FieldBinding } from '@/components/draft/use-form';
import type { FieldErrors } from '@/lib/fields/field-reader';
import { TRAIL, type TrailDraft } from '@/lib/fields/trail/trail-rows';

/** What every group of the page's fields works on. */
export type TrailFields = FieldsOf<typeof TRAIL> & {
  readonly draft: DraftState<TrailDraft>;
  readonly errors: FieldErrors;
  /** What is wrong with a field stands beside it at once: nothing here waits to be saved. */
  readonly bind: (name: string) => FieldBinding;
};

export function trailFields(draft: DraftState<TrailDraft>, errors: FieldErrors): TrailFields {
  const bind = (name: string): FieldBinding => ({
    name,
    label: '',
    error: errors[name.replace(/^(ride|card)\./, '')],
    onBlur: () => undefined,
  });
  return { draft, errors, bind, ...fieldsOf(TRAIL, { draft, form: { field: bind } }) };
}
