import type { UnitChoice } from '@/lib/units/choice';

/** One run as typed. */
export type RunDraft = {
  /** `run-2` was the third run of the event that was opened, `new-…` was not there. */
  readonly key: string;
  readonly name: string;
  /** Days after the event's date, '' where the order of the clock times says it. */
  readonly day: string;
  readonly start: string;
  /** Which moment is meant where the clock shows the start twice that night; '' where the order says it. */
  readonly which: '' | 'first' | 'second';
  /** A clock time, or minutes. */
  readonly end: string;
  /** What the form does not show, kept as it was. */
  readonly weight: number;
  readonly typicalSeconds: string;
};

export type SeriesDraft = {
  readonly first: string;
  readonly every: string;
  readonly count: string;
  readonly lasting: string;
  /** "Round" gives Round 1, Round 2 ... */
  readonly called: string;
};

/** Text fields keep what was typed, also where it is no number or time yet. */
export type EventDraft = {
  /** What bare numbers in this draft mean. */
  readonly units: UnitChoice;
  readonly name: string;
  readonly placeName: string;
  readonly latitude: string;
  readonly longitude: string;
  readonly elevation: string;
  readonly timezone: string;
  readonly date: string;
  readonly how: 'series' | 'list';
  readonly series: SeriesDraft;
  readonly runs: readonly RunDraft[];
  readonly typicalSeconds: string;
  readonly swapMinutes: string;
  readonly ride: boolean;
};

export function emptyRun(key: string, name: string): RunDraft {
  return { key, name, day: '', start: '', which: '', end: '', weight: 1, typicalSeconds: '' };
}
