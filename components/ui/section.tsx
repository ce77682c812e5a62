import { type ReactNode, useId } from 'react';
import styles from './section.module.css';

type SectionProps = {
  readonly title: string;
  /** Heading level; 2 by default. */
  readonly level?: 2 | 3;
  /** Acts or a note at the end of the heading's line. */
  readonly aside?: ReactNode;
  readonly id?: string;
  readonly children: ReactNode;
};

/** A ruled part of the page with its heading. */
export function Section({ title, level = 2, aside, id, children }: SectionProps) {
  const headingId = useId();
  const Heading = `h${level}` as const;
  return (
    <section className={styles.section} aria-labelledby={headingId} id={id}>
      <div className={level === 2 ? styles.head : styles.subhead}>
        <Heading id={headingId} className={styles.title}>
          {title}
        </Heading>
        {aside ? <div className={styles.aside}>{aside}</div> : null}
      </div>
      {children}
    </section>
  );
}
