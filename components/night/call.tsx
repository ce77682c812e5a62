import { memo } from 'react';
import { Section } from '@/components/ui/section';
import type { Standing } from '@/lib/standing/standing';
import { actSentences } from '@/lib/words/acts';
import { type CallVoice, loudSentences, quietSentences } from '@/lib/words/call';
import { purposeSentence } from '@/lib/words/purpose';
import { together } from '@/lib/words/together';
import styles from './call.module.css';

type CallProps = { readonly standing: Standing; readonly voice: CallVoice };

/** The plan in sentences, and why. */
export const Call = memo(function Call({ standing, voice }: CallProps) {
  const { plan } = standing;
  const loud = loudSentences(standing, voice);
  const sentences = quietSentences(standing, voice);
  const acts = actSentences(plan, voice);
  const purpose = purposeSentence(plan);
  return (
    <Section title="The call">
      {loud.map((sentence) => (
        <p key={sentence}>{together(sentence)}</p>
      ))}
      {sentences.length === 0 ? null : <p className={styles.call}>{together(sentences.join(' '))}</p>}
      {acts.length === 0 ? null : (
        <ul className={styles.reasons}>
          {acts.map(({ act, why, ifSkipped }) => (
            <li key={`${act} ${why}`}>
              <strong>{together(act)}:</strong> {together(why)} {ifSkipped}
            </li>
          ))}
        </ul>
      )}
      {purpose === null ? null : <p className={styles.others}>{purpose}</p>}
      {plan.kept ? (
        <p className={styles.others}>
          Kept as you accepted it: a fresh plan would differ by too little to be worth it.
        </p>
      ) : null}
    </Section>
  );
});
