import type { ComponentProps } from 'react';
import { Field, type FieldWords } from './field';
import styles from './field.module.css';

type TextFieldProps = FieldWords & {
  readonly value: string;
  readonly onChange: (text: string) => void;
} & Omit<ComponentProps<'input'>, 'value' | 'onChange' | 'id'>;

export function TextField({ label, hint, error, value, onChange, ...rest }: TextFieldProps) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(ids) => (
        <input
          type="text"
          {...rest}
          {...ids}
          className={styles.control}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </Field>
  );
}
