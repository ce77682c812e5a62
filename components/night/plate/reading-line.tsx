import { Way } from '@/components/ui/way';
import type { Standing } from '@/lib/standing/standing';
import type { ClockZone } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { readingWorthSentence } from '@/lib/words/reading-worth';
import styles from './plate.module.css';

type ReadingLineProps = {
  readonly standing: Standing;
  readonly zone: ClockZone;
  readonly units: UnitChoice;
  /** The form, over the view that is open. */
  readonly href: string;
};

/** One quiet line, and only while a reading would tell enough. */
export function ReadingLine({ standing, zone, units, href }: ReadingLineProps) {
  const sentence = readingWorthSentence(standing, { units, zone });
  if (sentence === null) return null;
  return (
    <p className={styles.reading}>
      {sentence} <Way href={href}>Enter what it says</Way>
    </p>
  );
}
