import type { ClockChange, ClockProblem } from '@/lib/time/local';
import type { ClockZone, InstantProblem } from '@/lib/time/zone';
import { localDate } from '@/lib/time/zone';

/** Why a typed date and clock time are no moment, and what to type instead. */
export function clockProblemSentence(problem: ClockProblem | InstantProblem): string {
  switch (problem.code) {
    case 'not-a-date':
      return `"${problem.text}" is not a date. Type year, month and day, such as 2027-01-16.`;
    case 'not-a-clock':
      return `"${problem.text}" is not a time. Type hours and minutes, such as 21:30 or 9:30 pm.`;
    case 'unknown-zone':
      return `"${problem.zone}" is not a time zone. Choose one such as America/Chicago.`;
    case 'missing-hour':
      return `That time does not exist: the clocks jump from ${problem.change.from} to ${problem.change.to} that day. Choose a time before or after.`;
    case 'no-offset':
      return `"${problem.text}" does not say its time zone. Add Z or an offset, such as 2027-01-16T19:30:00-06:00.`;
    case 'not-a-time':
      return `"${problem.text}" is not a time. Write it as 2027-01-16T19:30:00-06:00.`;
  }
}

/** A note for a night in which the clocks change: "The clocks go back from 03:00 to 02:00 on 2027-10-31." */
export function clockChangeNote({ at, minutes, from, to }: ClockChange, zone: ClockZone): string {
  const way = minutes > 0 ? 'forward' : 'back';
  return `The clocks go ${way} from ${from} to ${to} on ${localDate(at, zone)}.`;
}
