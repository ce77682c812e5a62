'use client';

import { useState } from 'react';
import { useWrite } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Section } from '@/components/ui/section';
import { type Column, Table } from '@/components/ui/table';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import { type HardwareShift, hardwareShifts } from '@/lib/carb/hardware';
import type { BaselineShift } from '@/lib/carb/machine';
import { type HardwareChangeRecord, withHardware, withoutHardware } from '@/lib/store/machine-history';
import { hardwareSince, machineWithBaseline } from '@/lib/store/machine-in-force';
import { newId } from '@/lib/store/new-id';
import type { MachineRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import {
  hardwareCautionSentence,
  hardwareShiftSentence,
  hardwareText,
  shiftText,
} from '@/lib/words/hardware';
import { HardwareForm } from './hardware-form';
import { IntakeCost } from './intake-cost';

type HardwareProps = {
  readonly stored: Stored<MachineRecord>;
  readonly units: UnitChoice;
  readonly today: string;
};

/** What was changed since the jets were proven, and what each change is taken to ask of the main. */
export function HardwareSection({ stored, units, today }: HardwareProps) {
  const write = useWrite();
  const [adding, setAdding] = useState(false);
  const record = stored.value;
  const since = hardwareSince(record);
  const shifts = hardwareShifts(since);
  const each = shifts.ok ? shifts.value.each : [];
  const before = record.hardware.filter((change) => !since.includes(change));
  const rows = [
    ...since.map((change, i) => ({ change, shift: each[i] ?? null })),
    ...before.map((change) => ({ change, shift: null })),
  ];
  return (
    <Section
      title="Parts since the baseline"
      aside={<Button onClick={() => setAdding(true)}>Add a change</Button>}
    >
      <Table
        caption="Changed parts"
        captionHidden
        rows={rows}
        rowKey={({ change }) => change.id}
        empty={
          <>
            Nothing was changed.{' '}
            <span data-for="screen">A part that changes how the engine breathes or burns belongs here.</span>
          </>
        }
        columns={columns(({ id, ...change }) =>
          write.change(
            { table: 'machines', id: stored.id },
            (current) => withoutHardware(current, id),
            `${hardwareText(change)} is removed.`,
          ),
        )}
      />
      {shifts.ok && each.length > 0 ? <Together {...shifts.value} /> : null}
      <IntakeCost machine={machineWithBaseline(record)} units={units} />
      <Dialog title="A changed part" open={adding} onClose={() => setAdding(false)}>
        <HardwareForm
          today={today}
          onCancel={() => setAdding(false)}
          onSave={async (change) => {
            const refused = await write.change(
              { table: 'machines', id: stored.id },
              (current) => withHardware(current, { id: newId(), ...change }),
              `${hardwareText(change)}: test the baseline again.`,
            );
            if (refused === undefined) setAdding(false);
            return refused;
          }}
        />
      </Dialog>
    </Section>
  );
}

type TogetherProps = { readonly each: readonly HardwareShift[]; readonly total: BaselineShift };

/** What all changes come to, and what to look at beside the main. */
function Together({ each, total }: TogetherProps) {
  const cautions = [...new Set(each.flatMap((shift) => shift.cautions))];
  return (
    <>
      <p>
        Together the right main is taken to move <strong>{shiftText(total)}</strong>. Plans carry this doubt
        until the jets are proven again.
      </p>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{hardwareCautionSentence(caution)}</li>
        ))}
      </ul>
    </>
  );
}

type Row = { readonly change: HardwareChangeRecord; readonly shift: HardwareShift | null };

function columns(onRemove: (change: HardwareChangeRecord) => void): readonly Column<Row>[] {
  return [
    {
      head: 'Change',
      names: true,
      cell: ({ change }) => `${hardwareText(change)}, ${change.on}`,
    },
    {
      head: 'What it asks of the main',
      cell: ({ change, shift }) => (
        <>
          {shift === null ? 'The baseline was proven with it.' : hardwareShiftSentence(shift)}
          {change.note === '' ? null : <> {change.note}</>}
        </>
      ),
    },
    {
      head: <VisuallyHidden>What to do</VisuallyHidden>,
      cell: ({ change }) => (
        <Button kind="quiet" aria-label={`Delete ${hardwareText(change)}`} onClick={() => onRemove(change)}>
          Delete
        </Button>
      ),
    },
  ];
}
