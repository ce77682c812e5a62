'use client';

import dynamic from 'next/dynamic';
import { useState } from 'react';
import { BackupDialog } from '@/components/backup/backup-dialog';
import { SetAsideWay } from '@/components/backup/set-aside-way';
import { useStoreHealth } from '@/components/store/store-provider';
import { usePreferences } from '@/components/store/use-preferences';
import { useTable } from '@/components/store/use-table';
import { useWrite } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { ButtonRow } from '@/components/ui/stack';
import { newMachineRecord } from '@/lib/store/new-machine-record';
import type { MachineRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { keepingSentence } from '@/lib/words/keeping';
import { EditedMachine } from './edited-machine';
import { FirstMachine } from './first-machine';
import { MachineEditor } from './machine-editor';
import { MachineList } from './machine-list';
import styles from './machines-page.module.css';
import { useOpenForm } from './use-open-form';

/** What learns from charts and logs comes when it is asked for. */
const MachineHistory = dynamic(
  () => import('@/components/baseline/machine-history').then((module) => module.MachineHistory),
  { ssr: false, loading: () => <p>Opening its history…</p> },
);

/** The short form, for the few who need it. */
const HomeMachine = dynamic(() => import('./home-machine').then((module) => module.HomeMachine), {
  ssr: false,
  loading: () => <p>Opening the form…</p>,
});

/** Stands before the id in the address where a machine's history is open, not its form. */
const HISTORY = 'history:';

/** The machines of this browser: a list, and the form of one of them. */
export function MachinesPage() {
  const machines = useTable('machines');
  const { preferences: units } = usePreferences();
  const form = useOpenForm();
  const edited = useStaying(machines?.find(({ id }) => id === form.open) ?? null, form.open);
  if (machines === null) return <main className={styles.page}>Opening your machines…</main>;
  if (form.open === 'new') return <NewMachine units={units} onClose={form.close} />;
  if (form.open === 'first')
    return <FirstMachine onKnow={() => form.show('new')} onHome={() => form.show('home')} />;
  if (form.open === 'home') return <HomeMachine units={units} onClose={form.close} />;
  if (edited !== null) {
    return (
      <main className={styles.page}>
        <h1>{edited.value.machine.name}</h1>
        <EditedMachine key={edited.id} machine={edited} units={units} onClose={form.close} />
      </main>
    );
  }
  const told = machines.find(({ id }) => `${HISTORY}${id}` === form.open);
  if (told !== undefined) {
    return (
      <main className={styles.page}>
        <h1>{told.value.machine.name}: baselines, parts, learning</h1>
        <div>
          <Button onClick={form.close}>Back to the machines</Button>
        </div>
        <MachineHistory key={told.id} stored={told} units={units} />
      </main>
    );
  }
  return (
    <main className={styles.page}>
      <ListHead onAdd={() => form.show('new')} />
      {machines.length === 0 ? <p>No machine yet. Add the one you race.</p> : null}
      <MachineList
        machines={machines}
        units={units}
        onEdit={form.show}
        onHistory={(id) => form.show(`${HISTORY}${id}`)}
      />
    </main>
  );
}

/** A record whose form is open stays on the page, also after another tab deleted it: what was typed is still in the form. */
function useStaying(found: Stored<MachineRecord> | null, open: string | null): Stored<MachineRecord> | null {
  const [last, setLast] = useState(found);
  if (found !== null && found !== last) setLast(found);
  return found ?? (last !== null && last.id === open ? last : null);
}

type NewMachineProps = { readonly units: UnitChoice; readonly onClose: () => void };

function NewMachine({ units, onClose }: NewMachineProps) {
  const write = useWrite();
  return (
    <main className={styles.page}>
      <h1>New machine</h1>
      <p>
        Name, mains, box and the air they were good in are enough; the rest has working defaults.{' '}
        <a href="/machines?edit=home">You know no jets? Read them off.</a>
      </p>
      <MachineEditor
        id="new"
        initial={null}
        units={units}
        onCancel={onClose}
        onSave={async (machine) => {
          const words = `${machine.name} is added.`;
          const refused = await write.add('machines', newMachineRecord(machine), words);
          if (refused === undefined) onClose();
          return refused;
        }}
      />
    </main>
  );
}

function ListHead({ onAdd }: { readonly onAdd: () => void }) {
  const [backup, setBackup] = useState(false);
  const health = useStoreHealth();
  return (
    <>
      <div className={styles.head}>
        <h1>Machines</h1>
        <ButtonRow>
          <Button kind="primary" onClick={onAdd}>
            Add a machine
          </Button>
          <Button onClick={() => setBackup(true)}>Backup</Button>
        </ButtonRow>
        <BackupDialog open={backup} onClose={() => setBackup(false)} />
      </div>
      <SetAsideWay />
      {health?.keeps !== 'disk' || health.promised === true ? null : (
        <p data-for="screen">{keepingSentence(health)}</p>
      )}
    </>
  );
}
