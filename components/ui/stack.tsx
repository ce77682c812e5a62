import type { ReactNode } from 'react';
import styles from './stack.module.css';

/** Things one under the other at an even distance. */
export function Stack({ children }: { readonly children: ReactNode }) {
  return <div className={styles.stack}>{children}</div>;
}

/** Fields side by side where there is room. */
export function Columns({ children }: { readonly children: ReactNode }) {
  return <div className={styles.columns}>{children}</div>;
}

/** Buttons in a row that wraps. */
export function ButtonRow({ children }: { readonly children: ReactNode }) {
  return <div className={styles.acts}>{children}</div>;
}
