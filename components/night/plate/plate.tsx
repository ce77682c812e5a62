import type { Acts } from '@/components/night/use-acts';
import { TRACK_READING } from '@/components/reading/reading-dialog';
import { useClockZone } from '@/components/store/use-clock-zone';
import { Notice } from '@/components/ui/notice';
import type { Night } from '@/lib/night/night';
import type { Standing } from '@/lib/standing/standing';
import type { UnitChoice } from '@/lib/units/choice';
import { dangerSentences } from '@/lib/words/danger';
import { riskSentence } from '@/lib/words/risk';
import { tonightSentence } from '@/lib/words/tonight';
import { DataLine } from './data-line';
import { FittedNow } from './fitted-now';
import { NextActBlock } from './next-act-block';
import styles from './plate.module.css';
import { QuestionBlock } from './question-block';
import { ReadingLine } from './reading-line';

export type PlateProps = {
  readonly night: Night;
  readonly standing: Standing;
  readonly acts: Acts;
  readonly units: UnitChoice;
  /** At the track. */
  readonly large?: boolean;
};

/** The first screen: what is in, how it stands, what comes next, the risk, and what all of it rests on. */
export function Plate({ night, standing, acts, units, large = false }: PlateProps) {
  const zone = useClockZone(night.zone);
  const { machine, request, series, records } = night;
  const { now, dangers, plan } = standing;
  const loud = dangerSentences(dangers, plan);
  const verdict = tonightSentence(machine);
  return (
    <div className={styles.plate}>
      <QuestionBlock {...{ machine, standing, zone, acts, large }} />
      {loud.length === 0 ? null : <Notice tone="danger" title={loud.join(' ')} />}
      <FittedNow {...{ machine, standing, zone, acts, large }} />
      <NextActBlock {...{ standing, zone, acts, large }} />
      <div className={styles.facts}>
        <p>{riskSentence(standing)}</p>
        {verdict === null ? null : <p>{verdict}</p>}
        <DataLine
          series={series}
          demo={records.event.value.demo}
          readings={request.readings}
          now={now}
          zone={zone}
        />
        <ReadingLine {...{ standing, zone, units }} href={large ? `#${TRACK_READING}` : '#reading'} />
      </div>
    </div>
  );
}
