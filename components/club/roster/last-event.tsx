'use client';

import { useState } from 'react';
import { useTable } from '@/components/store/use-table';
import { useWriteAll } from '@/components/store/use-write-all';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { Select } from '@/components/ui/select';
import { ButtonRow, Stack } from '@/components/ui/stack';
import type { ClubRecords } from '@/lib/night/club';
import { withTakenAlong } from '@/lib/night/taken-along';
import { MOST_RACERS } from '@/lib/share/new-racers';
import { newId } from '@/lib/store/new-id';
import { LAST_ROSTER, type PastRoster, pastRosters, takenAlongWords } from '@/lib/words/last-roster';
import { counted } from '@/lib/words/listing';
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

/** Puts everybody of another event on the roster of this one. Answers a sentence where it could not. */
function useTakeAlong(eventId: string) {
  const writeAll = useWriteAll();
  return async ({ value: fromId, names }: PastRoster): Promise<string | undefined> => {
    const taken = await writeAll(
      (current) => {
        const from = current.events.find(({ id }) => id === fromId)?.value;
        const here = current.events.find(({ id }) => id === eventId)?.value;
        if (from === undefined || here === undefined) return LAST_ROSTER.gone;
        const value = withTakenAlong(here, from, newId);
        if (value.machineIds.length > MOST_RACERS) return LAST_ROSTER.tooMany(MOST_RACERS);
        return {
          ...current,
          events: current.events.map((each) => (each.id === eventId ? { ...each, value } : each)),
        };
      },
      `${counted(names.length, 'racer')} added.`,
    );
    return taken.ok ? undefined : taken.reason;
  };
}
