'use client';

import type { ReactNode } from 'react';
import { useHours } from '@/components/store/use-clock-zone';
import { Button } from '@/components/ui/button';
import { type Column, Table } from '@/components/ui/table';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import type { LogRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { provenAirText } from '@/lib/words/baseline';
import { loggedRunText, secondsText, speedText, speedUnit, verdictText } from '@/lib/words/log';
import { settingText } from '@/lib/words/settings';
import { together } from '@/lib/words/together';

type LogTableProps = {
  readonly entries: readonly Stored<LogRecord>[];
  readonly names: ReadonlyMap<string, string>;
  readonly units: UnitChoice;
  readonly empty: ReactNode;
  readonly onEdit: (entry: Stored<LogRecord>) => void;
  readonly onRemove: (entry: Stored<LogRecord>) => void;
};

type Row = Stored<LogRecord>;

export function LogTable({ entries, names, units, empty, onEdit, onRemove }: LogTableProps) {
  const machine = ({ value }: Row): string => names.get(value.machineId) ?? 'a machine that was deleted';
  const hours = useHours();
  const columns: readonly Column<Row>[] = [
    { head: 'When', names: true, cell: ({ value }) => together(loggedRunText(value, hours)) },
    { head: 'Machine', wideOnly: true, cell: machine },
    { head: 'Jets', cell: ({ value }) => together(settingText(value.setting)) },
    { head: 'Verdict', cell: ({ value }) => verdictText(value) },
    {
      head: 'Air',
      wideOnly: true,
      cell: ({ value }) => provenAirText(value.air, units),
    },
    { head: 'Time, speed', wideOnly: true, cell: ({ value }) => paceText(value, units) },
    { head: 'Note', wideOnly: true, cell: ({ value }) => value.note },
    {
      head: <VisuallyHidden>What to do</VisuallyHidden>,
      cell: (row) => (
        <>
          <Button
            kind="quiet"
            aria-label={`Edit ${loggedRunText(row.value, hours)}`}
            onClick={() => onEdit(row)}
          >
            Edit
          </Button>
          <Button
            kind="quiet"
            aria-label={`Delete ${loggedRunText(row.value, hours)}`}
            onClick={() => onRemove(row)}
          >
            Delete
          </Button>
        </>
      ),
    },
  ];
  return (
    <Table
      caption="Runs, the newest first"
      captionHidden
      columns={columns}
      rows={entries}
      rowKey={({ id }) => id}
      empty={empty}
    />
  );
}

function paceText({ seconds, speedKmh }: LogRecord, units: UnitChoice): string {
  return [
    seconds === null ? '' : secondsText(seconds),
    speedKmh === null ? '' : speedText(speedKmh, speedUnit(units)),
  ]
    .filter((part) => part !== '')
    .join(', ');
}
