import { type ComponentProps, useRef } from 'react';
import { Button } from './button';
import { Field, type FieldWords } from './field';
import styles from './field.module.css';
import { flipSign } from './flip-sign';

type NumberFieldProps = FieldWords & {
  /** Text as typed; reading it as a number is the caller's affair. */
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly unit?: string;
  /** Shows a sign key: number pads of phones have no minus. */
  readonly signed?: boolean;
} & Omit<ComponentProps<'input'>, 'value' | 'onChange' | 'id' | 'type'>;

export function NumberField({
  label,
  hint,
  error,
  value,
  onChange,
  unit,
  signed = false,
  ...rest
}: NumberFieldProps) {
  const input = useRef<HTMLInputElement>(null);
  function flip() {
    onChange(flipSign(value));
    input.current?.focus();
  }
  return (
    <Field label={label} hint={hint} error={error}>
      {(ids) => (
        <div className={styles.line}>
          {signed ? (
            <Button className={styles.sign} aria-label={`Change sign of ${label}`} onClick={flip}>
              +/−
            </Button>
          ) : null}
          <input
            inputMode="decimal"
            autoComplete="off"
            {...rest}
            {...ids}
            ref={input}
            type="text"
            className={`${styles.control} ${styles.figures}`}
            value={value}
            onChange={(event) => onChange(event.target.value)}
          />
          {unit ? <span className={styles.unit}>{unit}</span> : null}
        </div>
      )}
    </Field>
  );
}
