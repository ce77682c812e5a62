import { Section } from '@/components/ui/section';
import styles from './about.module.css';
import { Prose } from './prose';
import { WorthTable } from './worth-table';

/** What following the plan was worth on nights that could be counted. */
export function WorthPart() {
  return (
    <Section title="What the plan is worth">
      <div className={styles.text}>
        <Prose>
          <strong>Much safer than keeping the baseline or reacting.</strong> About as safe as a thermometer
          and the law of this page, with fewer swaps (a quarter to two fifths fewer with readings), and known
          beforehand: which jets to own, and when to open the engine. <strong>It gains no power</strong>: the
          nearest jet by thermometer loses less to a rich mixture, 0.01 % against 0.03 %, but is lean in 1.9 %
          of the runs against 0.12 %.
        </Prose>
        <WorthTable />
        <Prose>
          <strong>Real are the hours</strong>: 68 winter nights at five stations in Minnesota, Illinois,
          Colorado and Alaska, drawn again and again. <strong>Drawn are the forecasts</strong>, with errors of
          the measured size, the engines, and what each reading was off. So the table tells how the ways
          compare, not how often your engine will run lean. Some swaps are made for power, at half a percent
          for each carburettor to open. With a reading it is one percent, since the next reading may ask for
          the old jets back: 0.07 swaps a night fewer, for 0.007 % of power. Where a swap is dearer than any
          power, only those for safety are left. Even who knows every minute beforehand swaps every second
          night.
        </Prose>
      </div>
    </Section>
  );
}
