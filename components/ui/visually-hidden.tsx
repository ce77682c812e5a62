import type { ReactNode } from 'react';
import styles from './visually-hidden.module.css';

/** For ears only. */
export function VisuallyHidden({ children }: { readonly children: ReactNode }) {
  return <span className={styles.hidden}>{children}</span>;
}
