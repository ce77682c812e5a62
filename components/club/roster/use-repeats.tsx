'use client';

import { type ReactNode, useMemo, useState } from 'react';
import { Choice } from '@/components/ui/choice';
import type { ClubRecords } from '@/lib/night/club';
import { calledOf, type NewRacer, repeatsOf } from '@/lib/share/new-racers';
import { repeatedRacersSentence } from '@/lib/words/roster';

type Repeats = {
  /** Who joins, by the answer as it stands. */
  readonly chosen: readonly NewRacer[];
  /** null where nobody looks like a racer that is here. */
  readonly question: ReactNode;
  /** What was pasted is another thing now, so the answer to the old one does not count. */
  readonly forget: () => void;
};

/** Asks about newcomers who look like racers that are here already: left out until somebody says they are others. */
export function useRepeats({ event, machines }: ClubRecords, racers: readonly NewRacer[]): Repeats {
  const [answer, setAnswer] = useState<'leave' | 'add'>('leave');
  const repeats = useMemo(
    () => repeatsOf({ event: event.value, machines }, racers),
    [event, machines, racers],
  );
  const repeated = racers.filter((_, i) => repeats[i] === true);
  return {
    chosen: answer === 'add' ? racers : racers.filter((_, i) => repeats[i] !== true),
    question:
      repeated.length === 0 ? null : (
        <Choice
          label={repeatedRacersSentence(repeated.map(calledOf))}
          value={answer}
          options={[
            { value: 'leave', label: 'Leave out' },
            { value: 'add', label: 'Add as others' },
          ]}
          onChange={setAnswer}
        />
      ),
    forget: () => setAnswer('leave'),
  };
}
