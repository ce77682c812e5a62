import { useId } from 'react';
import styles from './field.module.css';

type SwitchProps = {
  readonly label: string;
  readonly hint?: string;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly disabled?: boolean;
};

export function Switch({ label, hint, checked, onChange, disabled }: SwitchProps) {
  const id = useId();
  return (
    <label className={styles.toggle}>
      <span className={styles.label}>{label}</span>
      <input
        type="checkbox"
        className={styles.box}
        checked={checked}
        disabled={disabled}
        aria-describedby={hint ? id : undefined}
        onChange={(event) => onChange(event.target.checked)}
      />
      {hint ? (
        <span id={id} className={styles.hint}>
          {hint}
        </span>
      ) : null}
    </label>
  );
}
