import { instantFromJson } from '@/lib/contract/event-from-json';
import type { EventRecord, MachineRecord } from '@/lib/store/records';
import { dayText } from './day-text';
import styles from './night-head.module.css';

type NightHeadProps = { readonly event: EventRecord; readonly machine: MachineRecord | null };

/** Which night, which machine. */
export function NightHead({ event, machine }: NightHeadProps) {
  const { name, timezone, runs } = event.event;
  const first = runs[0];
  const parts = [
    first === undefined ? null : dayText(instantFromJson(first.start), timezone),
    machine?.machine.name ?? null,
  ].filter((part) => part !== null);
  return (
    <div className={styles.head}>
      <h1 className={styles.title}>{name}</h1>
      <p className={styles.facts}>{parts.join(' · ')}</p>
    </div>
  );
}
