import type { ReadingTimeProblem } from '@/lib/night/reading-time';

const WORDS: Readonly<Record<ReadingTimeProblem, string>> = {
  'not-a-clock': 'Type the time on the clock at the track, such as 19:40.',
  'not-yet': 'That time has not come yet. A reading is of now or earlier.',
  'missing-hour': 'The clocks jump over that time today. Type the time the clock shows.',
};

export function readingTimeWords(problem: ReadingTimeProblem): string {
  return WORDS[problem];
}
