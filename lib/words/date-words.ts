import { fromLocal } from '@/lib/time/local';
import { dayText } from '@/lib/words/day-text';

/** "Sat 16 Jan" for 2027-01-16; null where the text is no date. */
export function dateWords(date: string): string | null {
  const noon = fromLocal(date, '12:00', 'UTC');
  return noon.ok ? dayText(noon.value.at, 'UTC').replace(/ \d{4}$/, '') : null;
}
