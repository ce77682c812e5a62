import styles from './about.module.css';
import { Symbols } from './symbols';

type FormulaProps = {
  readonly text: string;
  /** What the symbols mean, with units. */
  readonly where?: string;
  readonly source: string;
};

/** One equation as it would be written down, what its symbols mean and where it is from. */
export function Formula({ text, where, source }: FormulaProps) {
  return (
    <figure className={styles.formula}>
      <p className={styles.equation}>
        <Symbols text={text} />
      </p>
      <figcaption className={styles.caption}>
        {where ? (
          <p>
            <Symbols text={where} />
          </p>
        ) : null}
        <p>
          Source: <Symbols text={source} />
        </p>
      </figcaption>
    </figure>
  );
}
