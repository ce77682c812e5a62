import type { ReactNode } from 'react';
import styles from './about.module.css';

type FormulaProps = {
  readonly text: string;
  /** What the symbols mean, with units. */
  readonly where?: ReactNode;
  readonly source: ReactNode;
};

/** One equation as it would be written down, what its symbols mean and where it is from. */
export function Formula({ text, where, source }: FormulaProps) {
  return (
    <figure className={styles.formula}>
      <p className={styles.equation}>{text}</p>
      <figcaption className={styles.caption}>
        {where ? <p>{where}</p> : null}
        <p>Source: {source}</p>
      </figcaption>
    </figure>
  );
}
