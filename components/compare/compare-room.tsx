'use client';

import { useState } from 'react';
import { usePreferences } from '@/components/store/use-preferences';
import { useTable } from '@/components/store/use-table';
import { useWrite } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { Select } from '@/components/ui/select';
import { ButtonRow } from '@/components/ui/stack';
import { DEFAULT_FAIR_OPTIONS } from '@/lib/power/fair-comparison';
import { ComparisonSheet } from './comparison-sheet';

/** All comparisons of this browser, one of them open. */
export function CompareRoom() {
  const comparisons = useTable('comparisons');
  const machines = useTable('machines');
  const log = useTable('log');
  const write = useWrite();
  const { preferences: units } = usePreferences();
  const [chosen, setChosen] = useState<string | null>(null);
  if (comparisons === null || machines === null || log === null) return <p>Opening the comparisons…</p>;
  const open = comparisons.find(({ id }) => id === chosen) ?? comparisons.at(-1) ?? null;
  const start = async () => {
    setChosen(null);
    await write.add(
      'comparisons',
      {
        name: `Comparison ${comparisons.length + 1}`,
        part: '',
        machineId: machines[0]?.id ?? null,
        standard: DEFAULT_FAIR_OPTIONS.standard,
        distanceM: null,
        pulls: [],
      },
      'A new comparison is open.',
    );
  };
  return (
    <>
      <ButtonRow>
        <Button kind={open === null ? 'primary' : 'plain'} onClick={() => void start()}>
          New comparison
        </Button>
        {open === null ? null : (
          <Button
            kind="quiet"
            onClick={() => void write.remove('comparisons', open, `${open.value.name} is deleted.`)}
          >
            Delete this one
          </Button>
        )}
      </ButtonRow>
      {comparisons.length < 2 || open === null ? null : (
        <Select
          label="Comparison"
          value={open.id}
          options={comparisons.map(({ id, value }) => ({ value: id, label: value.name }))}
          onChange={setChosen}
        />
      )}
      {open === null ? (
        <p>
          No comparison yet. Run or pull at least once before and once after the part; three each show how
          much runs differ by themselves.
        </p>
      ) : (
        <ComparisonSheet key={open.id} stored={open} {...{ machines, log, units, write }} />
      )}
    </>
  );
}
