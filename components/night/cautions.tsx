import { Section } from '@/components/ui/section';
import { cautionsFor } from '@/lib/words/cautions';
import styles from './cautions.module.css';

/** What keeps a person whole while jets are changed and after. */
export function Cautions() {
  return (
    <Section title="Before you touch it">
      <div className={styles.parts}>
        <CautionList title="Changing jets" texts={[...cautionsFor('swap'), ...cautionsFor('after-swap')]} />
        <CautionList
          title="First run on new jets"
          texts={[...cautionsFor('first-run'), ...cautionsFor('ice'), ...cautionsFor('indoors')]}
        />
        <CautionList title="What this is" texts={cautionsFor('model')} />
      </div>
    </Section>
  );
}

function CautionList({ title, texts }: { readonly title: string; readonly texts: readonly string[] }) {
  return (
    <div>
      <h3 className={styles.title}>{title}</h3>
      <ul className={styles.list}>
        {texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </div>
  );
}
