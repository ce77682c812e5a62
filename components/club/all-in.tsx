'use client';

import { Button } from '@/components/ui/button';
import { ButtonRow } from '@/components/ui/stack';
import type { PlannedRacer } from '@/lib/club/racer';
import { type BulkMoment, bulkLabel } from '@/lib/words/bulk';
import type { RosterActs } from './use-roster-acts';

type AllInProps = {
  readonly moments: readonly BulkMoment[];
  readonly planned: ReadonlyMap<string, PlannedRacer>;
  readonly acts: RosterActs;
};

/** What several racers have in since one moment, told at once and taken back at once. */
export function AllIn({ moments, planned, acts }: AllInProps) {
  if (moments.length === 0) return null;
  return (
    <ButtonRow>
      {moments.map((moment) => (
        <Button
          key={moment.at}
          onClick={() =>
            void acts.allFitted(
              moment.told.flatMap(({ racerId, setting, since }) => {
                const racer = planned.get(racerId);
                return racer === undefined ? [] : [{ racer, setting, since }];
              }),
              `${bulkLabel(moment)}.`,
            )
          }
        >
          {bulkLabel(moment)}
        </Button>
      ))}
    </ButtonRow>
  );
}
