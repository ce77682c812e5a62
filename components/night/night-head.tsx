import { instantFromJson } from '@/lib/contract/event-from-json';
import type { EventRecord, MachineRecord } from '@/lib/store/records';
import { dayText } from '@/lib/words/day-text';
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
  const { name, timezone, runs } = event.event;
  const first = runs[0];
  const parts = [
    first === undefined ? null : dayText(instantFromJson(first.start), timezone),
    machine?.machine.name ?? null,
  ].filter((part) => part !== null);
  return (
    <div className={styles.head}>
      <Title className={styles.title}>{name}</Title>
      <p className={styles.facts}>{parts.join(' · ')}</p>
    </div>
  );
}
