import { Section } from '@/components/ui/section';
import { cautionsFor } from '@/lib/words/cautions';
import styles from './trail.module.css';

/** What keeps a rider whole, where the acts of this page are done: far from home and cold. */
export function TrailCautions() {
  const cautions = ['swap', 'after-swap', 'first-run', 'indoors', 'ice', 'model'] as const;
  return (
    <Section title="Before you touch it">
      <ul className={styles.cautions}>
        {cautions.flatMap(cautionsFor).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </Section>
  );
}
