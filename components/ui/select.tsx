import type { ComponentProps } from 'react';
import { Field, type FieldWords } from './field';
import styles from './field.module.css';

export type Option<V extends string> = {
  readonly value: V;
  readonly label: string;
  readonly disabled?: boolean;
};

type SelectProps<V extends string> = FieldWords & {
  readonly value: V;
  readonly options: readonly Option<V>[];
  readonly onChange: (value: V) => void;
} & Omit<ComponentProps<'select'>, 'value' | 'onChange' | 'id'>;

export function Select<V extends string>({
  label,
  hint,
  error,
  value,
  options,
  onChange,
  ...rest
}: SelectProps<V>) {
  function choose(text: string) {
    const chosen = options.find((option) => option.value === text);
    if (chosen) onChange(chosen.value);
  }
  return (
    <Field label={label} hint={hint} error={error}>
      {(ids) => (
        <select
          {...rest}
          {...ids}
          className={styles.control}
          value={value}
          onChange={(event) => choose(event.target.value)}
        >
          {options.map((option) => (
            <option key={option.value} value={option.value} disabled={option.disabled}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
