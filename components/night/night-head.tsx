import type { EventRecord, MachineRecord } from '@/lib/store/records';
import { nightFacts } from '@/lib/words/night-facts';
import { together } from '@/lib/words/together';
import styles from './night-head.module.css';

type NightHeadProps = {
  readonly event: EventRecord;
  readonly machine: MachineRecord | null;
  /** 1 by default: the page is the night's own. */
  readonly level?: 1 | 2;
};

/** Which night, which machine. */
export function NightHead({ event, machine, level = 1 }: NightHeadProps) {
  const Title = `h${level}` as const;
  return (
    <div className={styles.head}>
      <Title className={styles.title}>{event.event.name}</Title>
      <p className={styles.facts}>{together(nightFacts(event, machine))}</p>
    </div>
  );
}
