import { NightFigure } from '@/components/night/figure/night-figure';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import { WholeNames } from '@/components/ui/whole-names';
import type { Night } from '@/lib/night/night';
import type { Standing } from '@/lib/standing/standing';
import { dataSentence } from '@/lib/words/data-sentence';
import { nightFacts } from '@/lib/words/night-facts';
import { riskSentence } from '@/lib/words/risk';
import { together } from '@/lib/words/together';
import type { Voice } from '@/lib/words/voice';
import styles from './fall.module.css';

type FallProps = { readonly night: Night; readonly standing: Standing; readonly voice: Voice };

/** The night from top to bottom: its risk at its head, what it rests on at its foot. */
export function Fall({ night, standing, voice }: FallProps) {
  const { event, machine } = night.records;
  const risk = together(riskSentence(standing));
  return (
    <section className={styles.fall} aria-label="The night">
      <h2 className={styles.title}>
        <VisuallyHidden>The night. </VisuallyHidden>
        {risk}
      </h2>
      <NightFigure {...{ standing, voice }} machine={night.machine} />
      <p className={styles.quiet}>
        <WholeNames text={dataSentence(night, standing.now, voice.zone)} />{' '}
        {together(nightFacts(event.value, machine.value))}
      </p>
    </section>
  );
}
