import { Field, type FieldWords } from './field';
import styles from './field.module.css';

type SliderProps = FieldWords & {
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  /** The value in words, for the eye and the screen reader. */
  readonly text: string;
  readonly onChange: (value: number) => void;
};

export function Slider({ label, hint, error, value, least, most, step, text, onChange }: SliderProps) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(ids) => (
        <div className={styles.line}>
          <input
            {...ids}
            type="range"
            className={styles.slider}
            min={least}
            max={most}
            step={step}
            value={value}
            aria-valuetext={text}
            onChange={(event) => onChange(event.target.valueAsNumber)}
          />
          <span className={styles.unit}>{text}</span>
        </div>
      )}
    </Field>
  );
}
