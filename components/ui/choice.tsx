import { useId } from 'react';
import { FieldError, type FieldWords } from './field';
import styles from './field.module.css';
import type { Option } from './select';

type ChoiceProps<V extends string> = FieldWords & {
  readonly value: V | null;
  readonly options: readonly Option<V>[];
  readonly onChange: (value: V) => void;
};

/** One of a few: a radio group that shows all its options at once. */
export function Choice<V extends string>({ label, hint, error, value, options, onChange }: ChoiceProps<V>) {
  const id = useId();
  return (
    <fieldset className={styles.group} aria-describedby={error ? `${id}-error` : undefined}>
      <legend className={styles.legend}>{label}</legend>
      {hint ? <p className={styles.hint}>{hint}</p> : null}
      <div className={styles.options}>
        {options.map((option) => (
          <label key={option.value} className={styles.option}>
            <input
              type="radio"
              name={id}
              value={option.value}
              checked={option.value === value}
              disabled={option.disabled}
              onChange={() => onChange(option.value)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </fieldset>
  );
}
