'use client';

import { useState } from 'react';
import type { RosterActs } from '@/components/club/use-roster-acts';
import { useTable } from '@/components/store/use-table';
import { Button } from '@/components/ui/button';
import { ButtonRow, Stack } from '@/components/ui/stack';
import { Switch } from '@/components/ui/switch';
import type { ClubRecords } from '@/lib/night/club';
import { MOST_RACERS } from '@/lib/share/new-racers';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import { machineNames } from '@/lib/store/roster-names';
import { counted } from '@/lib/words/listing';
import { jetsText } from '@/lib/words/settings';
import styles from './roster.module.css';

type PickMachinesProps = {
  readonly records: ClubRecords;
  readonly acts: RosterActs;
  readonly onDone: () => void;
};

/** Machines of this browser that are not on the roster yet. */
export function PickMachines({ records, acts, onDone }: PickMachinesProps) {
  const machines = useTable('machines') ?? [];
  const [picked, setPicked] = useState<readonly string[]>([]);
  const { machineIds } = records.event.value;
  const free = machines.filter(({ id }) => !machineIds.includes(id));
  const names = machineNames(free);
  const room = MOST_RACERS - machineIds.length;
  if (free.length === 0)
    return (
      <p className={styles.hint}>
        Every machine of this browser is on the roster. Add machines on the{' '}
        <a href="/machines">Machines page</a>, or paste a table here.
      </p>
    );
  async function add() {
    const joining = picked.map((machineId) => ({ machineId, name: '', classId: null }));
    const refused = await acts.join(joining, `${counted(joining.length, 'racer')} added.`);
    if (refused === undefined) onDone();
  }
  return (
    <Stack>
      {free.map(({ id, value }) => (
        <Switch
          key={id}
          label={names.get(id) ?? ''}
          hint={`Baseline ${jetsText(machineWithBaseline(value).carburettors.map(({ main }) => main))}`}
          checked={picked.includes(id)}
          onChange={(on) =>
            setPicked((before) => (on ? [...before, id] : before.filter((each) => each !== id)))
          }
        />
      ))}
      {picked.length > room ? (
        <p>{`An event holds ${MOST_RACERS} racers; there is room for ${room}.`}</p>
      ) : null}
      <ButtonRow>
        <Button
          kind="primary"
          disabled={picked.length === 0 || picked.length > room}
          onClick={() => void add()}
        >
          {picked.length === 0 ? 'Add' : `Add ${counted(picked.length, 'racer')}`}
        </Button>
      </ButtonRow>
    </Stack>
  );
}
