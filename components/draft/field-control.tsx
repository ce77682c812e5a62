import { useClockFace } from '@/components/store/use-clock-zone';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Select } from '@/components/ui/select';
import { Switch } from '@/components/ui/switch';
import { TextArea } from '@/components/ui/text-area';
import { TextField } from '@/components/ui/text-field';
import type { FieldOption, FieldRow } from '@/lib/fields/field-row';
import { isNumberKind, NUMBER_KINDS } from '@/lib/fields/number-kinds';
import type { UnitChoice } from '@/lib/units/choice';
import type { FieldBinding } from './use-form';

/** What a layout says otherwise than the row does, because it hangs on more than the form. */
export type FieldMore = {
  readonly label?: string;
  readonly hint?: string | undefined;
  readonly unit?: string;
  readonly placeholder?: string;
  readonly options?: readonly FieldOption[];
  /** What else a change sets in the field's group, where the row cannot know. */
  readonly sets?: (value: string) => Readonly<Record<string, string>>;
};

type FieldControlProps = {
  readonly row: FieldRow;
  readonly value: string | boolean;
  readonly units: UnitChoice;
  readonly binding: FieldBinding;
  readonly more: FieldMore;
  readonly onChange: (value: string | boolean) => void;
};

function standingHint({ hint }: FieldRow, value: string, units: UnitChoice): string | undefined {
  if (typeof hint === 'function') return hint(units);
  return typeof hint === 'object' ? hint[value] : hint;
}

/** The control of a row. */
export function FieldControl({ row, value, units, binding, more, onChange }: FieldControlProps) {
  const face = useClockFace();
  const { kind, control, type, clock, inputMode, autoComplete, maxLength, rows } = row;
  const standing = standingHint(row, String(value), units);
  const words = { label: more.label ?? binding.label, hint: 'hint' in more ? more.hint : standing };
  if (typeof value === 'boolean') return <Switch {...words} checked={value} onChange={onChange} />;
  if (kind === 'choice') {
    const chosen = { ...binding, ...words, value, options: more.options ?? row.options ?? [], onChange };
    return control === 'select' ? <Select {...chosen} /> : <Choice {...chosen} />;
  }
  const text = { ...binding, ...words, value, onChange, maxLength };
  if (control === 'area') return <TextArea {...text} rows={rows} />;
  const placeholder = more.placeholder ?? (clock === undefined ? row.placeholder : face(clock));
  const typing = { inputMode, autoComplete, placeholder };
  const input = { ...text, ...Object.fromEntries(Object.entries(typing).filter(([, each]) => each)) };
  const number = isNumberKind(kind) ? NUMBER_KINDS[kind] : null;
  if (number === null && row.signed === undefined) return <TextField {...input} type={type} />;
  return (
    <NumberField
      {...input}
      signed={row.signed ?? number?.signed}
      unit={more.unit ?? row.unit ?? number?.unit(units)}
    />
  );
}
