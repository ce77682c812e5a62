'use client';

import { useState } from 'react';
import { useAddRacers } from '@/components/club/use-add-racers';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { ButtonRow } from '@/components/ui/stack';
import type { NewRacer } from '@/lib/share/new-racers';
import { counted } from '@/lib/words/listing';

type JoinChosenProps = {
  readonly eventId: string;
  readonly chosen: readonly NewRacer[];
  readonly onDone: () => void;
};

/** Puts newcomers on the roster, and says so where it could not. */
export function JoinChosen({ eventId, chosen, onDone }: JoinChosenProps) {
  const [refusal, setRefusal] = useState<string | null>(null);
  const add = useAddRacers(eventId);
  async function addAll() {
    const refused = await add(chosen);
    setRefusal(refused ?? null);
    if (refused === undefined) onDone();
  }
  return (
    <>
      {refusal === null ? null : (
        <Notice tone="danger" title="Not added.">
          <p>{refusal}</p>
        </Notice>
      )}
      <ButtonRow>
        <Button kind="primary" disabled={chosen.length === 0} onClick={() => void addAll()}>
          {chosen.length === 0 ? 'Add' : `Add ${counted(chosen.length, 'racer')}`}
        </Button>
      </ButtonRow>
    </>
  );
}
