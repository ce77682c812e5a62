'use client';

import { useMemo, useState } from 'react';
import { useHours } from '@/components/store/use-clock-zone';
import { clockOf } from '@/lib/fields/clock-text';
import type { HoursDraft } from '@/lib/fields/hours/hours-draft';
import { readPastedHours } from '@/lib/hours/paste';
import type { PastedHours, PasteOptions, PasteProblem } from '@/lib/hours/pasted';
import type { Result } from '@/lib/result/result';
import { type Instant, instant } from '@/lib/time/instant';
import { localClock, localDate } from '@/lib/time/zone';

/** What a person answered about the pasted text. */
export type PasteAnswers = Pick<PasteOptions, 'columns' | 'commaIs' | 'dayOrder' | 'clock' | 'humidityScale'>;

export type PasteState = {
  /** The first hour as typed, where the text has no times of its own. */
  readonly start: string;
  readonly setStart: (text: string) => void;
  readonly answers: PasteAnswers;
  readonly answer: (answers: PasteAnswers) => void;
  /** null while nothing is pasted. */
  readonly reading: Result<PastedHours, PasteProblem> | null;
  /** Text pasted into an hour starts there. */
  readonly startAt: (at: Instant) => void;
  readonly reset: () => void;
};

/** Options for text that starts at a given moment of the night. */
export function optionsAt(draft: HoursDraft, at: Instant, zone: string): PasteOptions {
  const { temperature, pressure } = draft.units;
  return {
    date: localDate(at, zone),
    startClock: localClock(at, zone),
    zone,
    temperatureUnit: temperature,
    pressureUnit: pressure,
  };
}

/** Reads the pasted text with the answers given so far. Counting starts at the first hour of the night. */
export function usePaste(draft: HoursDraft, zone: string): PasteState {
  const hours = useHours();
  const first = draft.rows[0];
  const [at, setAt] = useState<Instant>(() => instant(first === undefined ? 0 : Date.parse(first.at)));
  const [start, setStart] = useState(() => localClock(at, { zone, hours }));
  const [answers, setAnswers] = useState<PasteAnswers>({});
  const { pasted } = draft;
  const reading = useMemo(() => {
    if (pasted.trim() === '') return null;
    const options = optionsAt(draft, at, zone);
    return readPastedHours(pasted, { ...options, startClock: clockOf(start) ?? start, ...answers });
  }, [draft, pasted, at, zone, start, answers]);
  return {
    start,
    setStart,
    answers,
    answer: (more) => setAnswers((before) => ({ ...before, ...more })),
    reading,
    startAt: (moment) => {
      setAt(moment);
      setStart(localClock(moment, { zone, hours }));
      setAnswers({});
    },
    reset: () => setAnswers({}),
  };
}
