/** What the first script of the night page leaves on its window. */
export type EarlyStart = {
  /** The page's worker, open before the page has woken up; null where it failed. */
  worker: Worker | null;
  /** The first screen, drawn by the worker; null until it is there, and where the page alone can answer. */
  answer: Element | Text | null;
};

declare global {
  var heavyAirStart: EarlyStart | undefined;
}

/** Said on the window once the answer is there. */
export const EARLY_ANSWER = 'heavy-air-answer';

/** On <html> once the page has woken up: from then on nothing but the page itself changes what stands there. */
export const AWAKE = 'data-awake';

/** What the worker is asked by its name, before anything of the page has arrived. */
export type EarlyQuestion = {
  /** The page's clock [ms since 1970]; a worker's own may be another. */
  readonly now: number;
  /** The device's language. */
  readonly language: string;
  /** The night that was shown last and has not changed since (JSON); null where none was kept. */
  readonly kept: string | null;
};

export const nameOfQuestion = ({ now, language, kept }: EarlyQuestion): string =>
  `${now} ${language} ${kept ?? ''}`;

/** null where nothing is asked. */
export function questionOfName(name: string): EarlyQuestion | null {
  const [now = '', language = '', ...kept] = name.split(' ');
  if (now === '') return null;
  return { now: Number(now), language, kept: kept.join(' ') || null };
}
