'use client';

import { type ReactNode, useState } from 'react';
import { Disclosure } from '@/components/ui/disclosure';
import styles from './fold.module.css';

type FoldProps = {
  readonly title: string;
  /** What holds inside, so that nobody must open it to see a default. */
  readonly now: string;
  /** True where something inside must be seen, such as a complaint. */
  readonly open: boolean;
  readonly children: ReactNode;
};

/** A part of a form that most leave as it is. Once it had to open it stays so, or it would shut under typing hands. */
export function Fold({ title, now, open, children }: FoldProps) {
  const [opened, setOpened] = useState(open);
  if (open && !opened) setOpened(true);
  return (
    <Disclosure
      open={opened}
      summary={
        <span className={styles.summary}>
          <span>{title}</span> <span className={styles.now}>{now}</span>
        </span>
      }
    >
      {children}
    </Disclosure>
  );
}
