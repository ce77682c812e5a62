'use client';

import { useState } from 'react';
import type { FormReading } from '@/lib/fields/field-reader';
import type { DraftOf, FieldTable } from '@/lib/fields/field-row';
import { blankDraft, fieldLabel } from '@/lib/fields/table-values';
import { METRIC_UNITS } from '@/lib/units/choice';
import { type FieldsOf, fieldsOf } from './fields-of';
import type { Untaken } from './untaken';
import { type DraftState, useDraft } from './use-draft';
import { type FormState, type Save, useForm } from './use-form';

type Editing<T extends FieldTable, D, V> = {
  /** Under what the unsaved typing is kept; one per record. */
  readonly key: string;
  readonly table: T;
  /** What the form opens with. */
  readonly initial: () => D;
  /** A draft with one entry in every list; absent where the table is all there is to the draft. */
  readonly shape?: D;
  readonly read: (draft: D) => FormReading<V>;
  readonly labelOf?: (name: string) => string;
  readonly onSave: Save<V>;
  readonly untaken?: (draft: D) => Untaken<D> | null;
};

export type FieldsForm<T extends FieldTable, D extends DraftOf<T> = DraftOf<T>> = FieldsOf<T> & {
  readonly draft: DraftState<D>;
  readonly form: FormState;
};

/** A form made of rows: its draft with the way back, its reading, and its fields to be laid out. Client only. */
export function useFields<T extends FieldTable, D extends DraftOf<T>, V>(
  editing: Editing<T, D, V>,
): FieldsForm<T, D> {
  const { key, table, read, onSave, untaken } = editing;
  const [initial] = useState(editing.initial);
  // A draft that is more than its table comes with its shape.
  const [shape] = useState(() => editing.shape ?? (blankDraft(table, METRIC_UNITS) as D));
  const draft = useDraft({ key, initial, shape });
  const form = useForm({
    draft,
    read,
    labelOf: editing.labelOf ?? ((name) => fieldLabel(table, name)),
    onSave,
    untaken: untaken?.(draft.value) ?? null,
  });
  return { draft, form, ...fieldsOf(table, { draft, form }) };
}
