'use client';

import { Select } from '@/components/ui/select';
import { Columns } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { LogFilter } from '@/lib/store/log-filter';
import { RUN_VERDICTS } from '@/lib/words/verdict-choices';

const VERDICTS: readonly { readonly value: LogFilter['verdict']; readonly label: string }[] = [
  { value: '', label: 'Any' },
  ...RUN_VERDICTS,
];

type LogFilterFieldsProps = {
  readonly filter: LogFilter;
  readonly names: ReadonlyMap<string, string>;
  readonly onChange: (filter: LogFilter) => void;
};

export function LogFilterFields({ filter, names, onChange }: LogFilterFieldsProps) {
  const machines = [...names].map(([value, label]) => ({ value, label }));
  return (
    <Columns>
      <Select
        label="Machine"
        value={filter.machineId}
        options={[{ value: '', label: 'All machines' }, ...machines]}
        onChange={(machineId) => onChange({ ...filter, machineId })}
      />
      <Select
        label="Verdict"
        value={filter.verdict}
        options={VERDICTS}
        onChange={(verdict) => onChange({ ...filter, verdict })}
      />
      <TextField
        label="Find in run, note, date and jets"
        type="search"
        value={filter.text}
        onChange={(text) => onChange({ ...filter, text })}
      />
    </Columns>
  );
}
