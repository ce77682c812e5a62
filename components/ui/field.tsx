import { type ReactNode, useId } from 'react';
import styles from './field.module.css';

/** What a control must carry so that its label, hint and error are spoken with it. */
export type FieldIds = {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': true | undefined;
};

export type FieldWords = {
  readonly label: string;
  /** Standing help under the label. */
  readonly hint?: ReactNode;
  /** What is wrong and what to do about it. */
  readonly error?: ReactNode;
};

type FieldProps = FieldWords & { readonly children: (ids: FieldIds) => ReactNode };

/** Label, hint and error around one control; the control takes the ids. */
export function Field({ label, hint, error, children }: FieldProps) {
  const id = useId();
  const hintId = `${id}-hint`;
  const errorId = `${id}-error`;
  const described = [hint ? hintId : null, error ? errorId : null].filter((part) => part !== null).join(' ');
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={styles.label}>
        {label}
      </label>
      {hint ? (
        <p id={hintId} className={styles.hint}>
          {hint}
        </p>
      ) : null}
      {children({ id, 'aria-describedby': described || undefined, 'aria-invalid': error ? true : undefined })}
      <FieldError id={errorId}>{error}</FieldError>
    </div>
  );
}

export function FieldError({ id, children }: { readonly id: string; readonly children: ReactNode }) {
  if (!children) return null;
  return (
    <p id={id} className={styles.error}>
      {children}
    </p>
  );
}
