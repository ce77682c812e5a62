import { Section } from '@/components/ui/section';
import type { Plan } from '@/lib/plan/types';
import { actSentences } from '@/lib/words/acts';
import { type CallVoice, callSentences } from '@/lib/words/call';
import { loudSentences } from '@/lib/words/loud';
import { oneSwapLess, runnerUpSentence } from '@/lib/words/price';
import styles from './call.module.css';

type CallProps = { readonly plan: Plan; readonly voice: CallVoice };

/** The plan in sentences, and why. */
export function Call({ plan, voice }: CallProps) {
  // What is loud stands at the top of the page already.
  const loud = loudSentences(plan);
  const sentences = callSentences(plan, voice).filter((sentence) => !loud.includes(sentence));
  const acts = actSentences(plan, voice);
  const others = [oneSwapLess(plan), runnerUpSentence(plan)].filter((text) => text !== null);
  return (
    <Section title="The call">
      <p className={styles.call}>{sentences.join(' ')}</p>
      {acts.length === 0 ? null : (
        <ul className={styles.reasons}>
          {acts.map(({ act, why, ifSkipped }) => (
            <li key={`${act} ${why}`}>
              <strong>{act}:</strong> {why} {ifSkipped}
            </li>
          ))}
        </ul>
      )}
      {others.length === 0 ? null : <p className={styles.others}>{others.join(' ')}</p>}
      {plan.kept ? (
        <p className={styles.others}>
          Kept as you accepted it: a fresh plan would differ by too little to be worth it.
        </p>
      ) : null}
    </Section>
  );
}
