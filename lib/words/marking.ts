import type { MarkingDoubt } from '@/lib/carb/marking-doubt';

/** "4.10 mm": the hole of a jet marked by bore. */
const hole = (size: number): string => `${(size / 100).toFixed(2)} mm`;

/** Why the marking is asked about, and the question; which steps go with which marking is common practice, no source. */
export function markingQuestion({ code, size }: MarkingDoubt): string {
  switch (code) {
    case 'bore-too-wide':
    case 'bore-too-narrow':
      return `Marked by bore, a ${size} has a hole of ${hole(size)}. Main jets have holes of about 0.5 to 2.5 mm. Is ${size} its flow?`;
    case 'bore-in-tens':
      return `Steps of 10 (380, 390) are usually flow, steps of 2 to 3 (160, 162.5) usually bore. Is a ${size} really a hole of ${hole(size)}?`;
    case 'flow-between-fives':
      return `Steps of 2 to 3 (160, 162.5) are usually bore, steps of 10 (380, 390) usually flow. Is a ${size} a hole of ${hole(size)}?`;
  }
}

/** The same beside a plan: what is at stake, and where to answer. */
export function markingWarning(doubt: MarkingDoubt): string {
  return `${markingQuestion(doubt)} A wrong marking makes every swap half or twice what the air asks for, and can leave the engine lean. Answer in the machine.`;
}
