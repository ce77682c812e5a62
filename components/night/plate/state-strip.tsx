import { classNames } from '@/components/ui/class-names';
import type { DriftState } from '@/lib/plan/types';
import styles from './state-strip.module.css';

const STATES: readonly DriftState[] = ['lean', 'right', 'rich'];

/** Three places side by side; the one that holds is filled. For the eye only: the same stands beside it in words. */
export function StateStrip({ state }: { readonly state: DriftState }) {
  return (
    <div className={styles.strip} aria-hidden="true">
      {STATES.map((each) => (
        <span key={each} className={classNames(styles.place, each === state && styles[each])}>
          <span className={styles.word}>{each}</span>
        </span>
      ))}
    </div>
  );
}
