import type { Night } from '@/components/night/night';
import type { Acts } from '@/components/night/use-acts';
import { useClockZone } from '@/components/store/use-clock-zone';
import { Notice } from '@/components/ui/notice';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import { loudSentences } from '@/lib/words/loud';
import { howSure } from '@/lib/words/sure';
import { DataLine } from './data-line';
import { FittedNow } from './fitted-now';
import { NextActBlock } from './next-act-block';
import styles from './plate.module.css';
import { fittedStanding } from './standing';

export type PlateProps = {
  readonly night: Night;
  readonly plan: Plan;
  readonly now: Instant;
  readonly acts: Acts;
  readonly large?: boolean;
};

/** The first screen: what is fitted, how it stands, what comes next, how sure, and what all of it rests on. */
export function Plate({ night, plan, now, acts, large = false }: PlateProps) {
  const zone = useClockZone(night.zone);
  const { fitted, machine, request, series, records } = night;
  const loud = loudSentences(plan);
  return (
    <div className={styles.plate}>
      {loud.length === 0 ? null : <Notice tone="danger" title={loud.join(' ')} />}
      <FittedNow
        machine={machine}
        acts={acts}
        large={large}
        fitted={fitted}
        told={request.fitted !== null}
        standing={fittedStanding({ machine, fitted, plan, now })}
        plan={plan}
        zone={zone}
      />
      <NextActBlock plan={plan} fitted={fitted} now={now} zone={zone} acts={acts} large={large} />
      <div className={styles.facts}>
        <p>{howSure(plan)}</p>
        <DataLine
          series={series}
          demo={records.event.value.demo}
          readings={request.readings}
          now={now}
          zone={zone}
        />
      </div>
    </div>
  );
}
