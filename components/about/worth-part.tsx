import { Section } from '@/components/ui/section';
import styles from './about.module.css';
import { WorthTable } from './worth-table';

/** What following the plan was worth on nights that could be counted. */
export function WorthPart() {
  return (
    <Section title="What the plan is worth">
      <div className={styles.text}>
        <p>
          <strong>Much safer than keeping the baseline or reacting.</strong> About as safe as a thermometer
          and the law of this page, with fewer swaps (a sixth to a quarter fewer with readings), and known
          beforehand: which jets to own, and when to open the engine. <strong>It gains no power</strong>: the
          nearest jet by thermometer loses less to a rich mixture, 0.01 % against 0.04 %, and runs lean fifty
          times as often.
        </p>
        <WorthTable />
        <p>
          <strong>Real are the hours</strong>: eight winter nights at three stations in Minnesota, Colorado
          and Alaska, drawn again and again. <strong>Drawn are the forecasts</strong>, with errors of the
          measured size, the engines, and what each reading was off. So the table tells how the ways compare,
          not how often your engine will run lean. Some swaps are made for power; where a swap is dearer than
          any power, only those for safety are left. Even who knows every minute beforehand swaps every second
          night.
        </p>
      </div>
    </Section>
  );
}
