import type { BoardMachineAnswer } from '@/lib/contract/board-answer';
import type { Instant } from '@/lib/time/instant';
import { countdown } from './countdown';
import { STATE_WORD } from './grades';
import { capital } from './listing';

/** What the pages of a board say. */
export const BOARD_WORDS = {
  what: 'The server plans this night again by itself and buzzes the phones of those who follow it: when a next job changes, when its time comes, when the forecast is old.',
  kept: 'The server keeps the night with its place, machines and names, and the push addresses of phones that follow. All of it is gone 48 hours after the last run, or when you take it down.',
  link: 'Whoever has it can read the board and say what is in.',
  opened: 'A board is opened by its link, or by the code on the wall.',
  pick: 'Who are you?',
  gone: 'This board is gone: its night is over, it was taken down, or the link is not whole.',
  noAnswer: 'The server does not answer. What stands here may be old.',
  buzz: 'Buzz me',
  buzzes: 'This phone buzzes for this machine.',
  stop: 'Stop buzzing',
  late: 'Everybody runs late',
  lateElsewhere: 'Times are moved in the browser that posted this board.',
  told: 'What was told',
  nothingTold: 'Nothing yet: no next job has changed.',
} as const;

/** Why this browser cannot buzz, and what to do. */
export type NoBuzz = 'no-https' | 'home-screen' | 'no-push' | 'blocked' | 'refused' | 'server';

const KEEP_OPEN = 'Or keep this page open: it looks every 15 seconds.';

export function noBuzzSentence(why: NoBuzz): string {
  switch (why) {
    case 'no-https':
      return 'Phones buzz only for pages opened by https. On this network keep this page open: it looks every 15 seconds.';
    case 'home-screen':
      return `On an iPhone or iPad, add this page to the home screen first, and open it from there. ${KEEP_OPEN}`;
    case 'no-push':
      return 'This browser cannot buzz for a page. Keep this page open: it looks every 15 seconds.';
    case 'blocked':
      return `Notifications are blocked for this site. Allow them in the settings of the browser. ${KEEP_OPEN}`;
    case 'refused':
      return `The push service of this browser does not answer. Try again with internet. ${KEEP_OPEN}`;
    case 'server':
      return `The server did not take it. Try again. ${KEEP_OPEN}`;
  }
}

/** "20 min late"; '' where it is on time. */
export function lateText(minutes: number): string {
  if (minutes === 0) return '';
  return minutes > 0 ? `${minutes} min late` : `${-minutes} min early`;
}

/** "in 12 min" before a job's window, "begin in 5 min at the latest" within it, "too late to begin" after it. */
export function jobAwayText(
  { windowStart, latestStart }: { readonly windowStart: Instant; readonly latestStart: Instant },
  now: Instant,
): string {
  if (now < windowStart) return countdown(now, windowStart);
  return now <= latestStart ? `begin ${countdown(now, latestStart)} at the latest` : 'too late to begin';
}

type Now = Pick<BoardMachineAnswer, 'state' | 'driftPercent'>;

/** "Lean, 4.1 % leaner than the baseline." */
export function stateSentence({ state, driftPercent }: Now): string {
  if (state === null || driftPercent === null)
    return 'No hours for now: nothing can be said about this mixture.';
  const size = Math.abs(driftPercent).toFixed(1);
  const word = capital(STATE_WORD[state]);
  if (size === '0.0') return `${word}, as the baseline.`;
  return `${word}, ${size} % ${driftPercent < 0 ? 'leaner' : 'richer'} than the baseline.`;
}

/** What is said once all runs to come were moved. */
export function everybodyLaterText(minutes: number): string {
  return `Every run to come is ${minutes} min later.`;
}

/** What a board's code is called. */
export function boardCodeTitle(night: string): string {
  return `Board of ${night}`;
}

/** "2 phones", "1 phone", "nobody yet". */
export function phonesText(phones: number): string {
  if (phones === 0) return 'nobody yet';
  return phones === 1 ? '1 phone' : `${phones} phones`;
}
