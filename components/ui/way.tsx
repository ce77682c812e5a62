import type { ComponentProps } from 'react';
import { classNames } from './class-names';
import styles from './way.module.css';

type WayProps = ComponentProps<'a'> & {
  /** `firm` looks like a button: the way on from where it stands. `act` is the one way on, as wide as its place. */
  readonly kind?: 'plain' | 'firm' | 'act';
};

/** A link on a line of its own, as tall as a finger needs. */
export function Way({ kind = 'plain', className, ...rest }: WayProps) {
  return <a {...rest} className={classNames(styles.way, kind !== 'plain' && styles[kind], className)} />;
}
