import type { Night } from '@/lib/night/night';
import type { Standing } from '@/lib/standing/standing';
import { type ClockZone, localClock } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { airLine } from '@/lib/words/air-line';
import styles from './top-line.module.css';

type TopLineProps = {
  readonly night: Night;
  readonly standing: Standing;
  readonly zone: ClockZone;
  readonly units: UnitChoice;
  /** What hinders a newer forecast, in two words; null: nothing does. */
  readonly fault: string | null;
};

/** Which night and what time it is there; under it the air of now, where it comes from and how old that is. */
export function TopLine({ night: { records, series }, standing, zone, units, fault }: TopLineProps) {
  const { event, demo } = records.event.value;
  const { facts, source, age } = airLine(standing, units, { series, demo, fault });
  return (
    <div className={styles.top}>
      <div className={styles.row}>
        <h1 className={styles.event}>{event.name}</h1>
        <p className={styles.clock}>{localClock(standing.now, zone)}</p>
      </div>
      <p className={styles.air}>
        {facts.map((fact) => (
          <span key={fact}>{fact} </span>
        ))}
        <span className={styles[age === 'part typed' ? 'typed' : age]}>{source}</span>
      </p>
    </div>
  );
}
