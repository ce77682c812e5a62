'use client';

import dynamic from 'next/dynamic';
import { useOpenedBy } from '@/components/ui/use-opened-by';
import { Way } from '@/components/ui/way';
import styles from './night-page.module.css';
import type { NumbersProps } from './numbers';

/** What opens it: its own link, and every form that stands in it. */
const OPENERS: readonly string[] = ['numbers', 'set-up', 'event', 'hours', 'machine', 'new-night'];

const Numbers = dynamic(() => import('./numbers').then((module) => module.Numbers), {
  ssr: false,
  loading: () => <p>Opening…</p>,
});

/** One link; what stands behind it is loaded by whoever follows it, and stays open. */
export function NumbersOnRequest(props: NumbersProps) {
  const open = useOpenedBy(OPENERS);
  return (
    <div id="numbers" className={styles.numbers}>
      {open ? <Numbers {...props} /> : <Way href="#numbers">Numbers</Way>}
    </div>
  );
}
