'use client';

import { useState } from 'react';
import { useTakeAlong } from '@/components/club/use-take-along';
import { useTable } from '@/components/store/use-table';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { Select } from '@/components/ui/select';
import { ButtonRow, Stack } from '@/components/ui/stack';
import type { ClubRecords } from '@/lib/night/club';
import { LAST_ROSTER, pastRosters, takenAlongWords } from '@/lib/words/last-roster';
import styles from './roster.module.css';

type LastEventProps = { readonly records: ClubRecords; readonly onDone: () => void };

/** Everybody of an event before, with bibs, names, classes and boxes. */
export function LastEvent({ records, onDone }: LastEventProps) {
  const events = useTable('events') ?? [];
  const machines = useTable('machines') ?? [];
  const past = pastRosters(records.event, events, machines);
  const [chosen, setChosen] = useState('');
  const [refusal, setRefusal] = useState<string | null>(null);
  const take = useTakeAlong(records.event.id);
  const from = past.find(({ value }) => value === chosen) ?? past[0];
  if (from === undefined) return <p className={styles.hint}>{LAST_ROSTER.none}</p>;
  return (
    <Stack>
      <p className={styles.hint}>{LAST_ROSTER.what}</p>
      {refusal === null ? null : <Notice tone="danger" title={refusal} />}
      <Select label="Of which event" value={from.value} options={past} onChange={setChosen} />
      <p>{takenAlongWords(from)}</p>
      <ButtonRow>
        <Button
          kind="primary"
          disabled={from.names.length === 0}
          onClick={() =>
            void take(from).then((refused) => {
              setRefusal(refused ?? null);
              if (refused === undefined) onDone();
            })
          }
        >
          {LAST_ROSTER.take}
        </Button>
      </ButtonRow>
    </Stack>
  );
}
