import type { ReactNode } from 'react';
import type { DraftOf, FieldGroup, FieldName, FieldRows, FieldTable, ValuesOf } from '@/lib/fields/field-row';
import { rowNow } from '@/lib/fields/table-values';
import type { UnitChoice } from '@/lib/units/choice';
import { FieldControl, type FieldMore } from './field-control';
import type { ChangeDraft } from './use-draft';
import type { FormState } from './use-form';

type Bind = FormState['field'];

/** Where the fields of one group stand: what they hold, and how they are changed. */
type GroupPlace<R extends FieldRows> = {
  readonly group: FieldGroup<R>;
  readonly values: ValuesOf<R>;
  readonly units: UnitChoice;
  /** Before the names of the fields: 'limits.', 'runs.2.'. */
  readonly prefix: string;
  readonly bind: Bind;
  /** `step` names the field of the change; null is an act of its own (see `useDraft`). */
  readonly put: (step: string | null, values: Partial<ValuesOf<R>>) => void;
};

/** Draws the fields of one group by their names; a field that is not asked is not there. */
export function groupFields<R extends FieldRows>(place: GroupPlace<R>) {
  const { group, units, prefix, bind, put } = place;
  const values = place.values as Readonly<Record<string, string | boolean>>;
  return (key: keyof R & string, more: FieldMore = {}): ReactNode => {
    const row = rowNow(group, key, values);
    if (row === null || row.kind === 'kept') return null;
    return (
      <FieldControl
        key={`${prefix}${key}`}
        row={row}
        value={values[key] ?? row.blank}
        units={units}
        binding={{ ...bind(`${prefix}${key}`), label: row.label }}
        more={more}
        onChange={(value) => {
          // The group was made with functions of its own values.
          const also = group.sets[key]?.(value as never, units) ?? more.sets?.(String(value)) ?? {};
          const alone = Object.keys(also).length > 0 && (row.kind === 'choice' || key in also);
          put(alone ? null : `${prefix}${key}`, { [key]: value, ...also } as Partial<ValuesOf<R>>);
        }}
      />
    );
  };
}

type FormParts<D> = {
  readonly draft: { readonly value: D; readonly change: ChangeDraft<D> };
  readonly form: { readonly field: Bind };
};

/** Draws the fields of a form by their names, and all of a group in their order. */
export type FieldsOf<T extends FieldTable> = {
  readonly field: (name: FieldName<T>, more?: FieldMore) => ReactNode;
  /** Without the switch that the group is asked with. */
  readonly all: (group: Exclude<keyof T & string, 'top'>) => ReactNode;
};

export function fieldsOf<T extends FieldTable, D extends DraftOf<T>>(
  table: T,
  { draft, form }: FormParts<D>,
): FieldsOf<T> {
  const { units } = draft.value;
  const top = groupFields({
    group: table.top,
    values: draft.value,
    units,
    prefix: '',
    bind: form.field,
    put: (step, values) => draft.change(step, (before) => ({ ...before, ...values })),
  });
  const inside = (name: string) => {
    const key = name as keyof D;
    return groupFields<FieldRows>({
      group: table[name] as FieldGroup,
      values: draft.value[key] as ValuesOf<FieldRows>,
      units,
      prefix: `${name}.`,
      bind: form.field,
      put: (step, values) =>
        draft.change(step, (before) => ({ ...before, [key]: { ...(before[key] as object), ...values } })),
    });
  };
  return {
    field: (name, more) => {
      const [first = '', key] = name.split('.');
      return key === undefined ? top(first, more) : inside(first)(key, more);
    },
    all: (name) => {
      const { rows, switch: switched } = table[name] as FieldGroup;
      const draw = inside(name);
      return Object.keys(rows).map((key) => (key === switched?.key ? null : draw(key)));
    },
  };
}
