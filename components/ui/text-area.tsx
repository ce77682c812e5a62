import type { ComponentProps } from 'react';
import { Field, type FieldWords } from './field';
import styles from './field.module.css';

type TextAreaProps = FieldWords & {
  readonly value: string;
  readonly onChange: (text: string) => void;
} & Omit<ComponentProps<'textarea'>, 'value' | 'onChange' | 'id'>;

export function TextArea({ label, hint, error, value, onChange, ...rest }: TextAreaProps) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(ids) => (
        <textarea
          rows={6}
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
