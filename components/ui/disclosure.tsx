import type { ReactNode } from 'react';
import styles from './disclosure.module.css';

type DisclosureProps = {
  readonly summary: ReactNode;
  readonly open?: boolean;
  readonly children: ReactNode;
};

/** Shows more on request; the browser's own element, so it works before any script has loaded. */
export function Disclosure({ summary, open = false, children }: DisclosureProps) {
  return (
    <details className={styles.disclosure} open={open}>
      <summary className={styles.summary}>
        {/* For the eye: the ear is told by the browser whether it is open. */}
        <span className={styles.mark} aria-hidden="true" />
        {summary}
      </summary>
      <div className={styles.body}>{children}</div>
    </details>
  );
}
