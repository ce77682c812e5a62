import type { ReactNode } from 'react';
import styles from './editor-form.module.css';

/** Short numbers side by side, two to a phone's width. */
export function NarrowColumns({ children }: { readonly children: ReactNode }) {
  return <div className={styles.narrow}>{children}</div>;
}
