'use client';

import { usePreferences } from '@/components/store/use-preferences';
import { useTable } from '@/components/store/use-table';
import { Button } from '@/components/ui/button';
import { EditedMachine } from './edited-machine';
import { MachineEditor } from './machine-editor';
import { MachineList } from './machine-list';
import styles from './machines-page.module.css';
import { useMachineActs } from './use-machine-acts';
import { useOpenForm } from './use-open-form';

/** The machines of this browser: a list, and the form of one of them. */
export function MachinesPage() {
  const machines = useTable('machines');
  const acts = useMachineActs();
  const { preferences: units } = usePreferences();
  const form = useOpenForm();
  const edited = machines?.find(({ id }) => id === form.open) ?? null;
  if (machines === null || acts === null) return <main className={styles.page}>Opening your machines…</main>;
  if (form.open === 'new') {
    return (
      <main className={styles.page}>
        <h1>New machine</h1>
        <p>Name, mains, box and the air they were right in are enough; the rest has working defaults.</p>
        <MachineEditor
          id="new"
          initial={null}
          units={units}
          onCancel={form.close}
          onSave={async (machine) => {
            const refused = await acts.add(machine);
            if (refused === undefined) form.close();
            return refused;
          }}
        />
      </main>
    );
  }
  if (edited !== null) {
    return (
      <main className={styles.page}>
        <h1>{edited.value.machine.name}</h1>
        <EditedMachine key={edited.id} machine={edited} units={units} onClose={form.close} />
      </main>
    );
  }
  return (
    <main className={styles.page}>
      <div className={styles.head}>
        <h1>Machines</h1>
        <Button kind="primary" onClick={() => form.show('new')}>
          Add a machine
        </Button>
      </div>
      {machines.length === 0 ? <p>No machine yet. Add the one you race.</p> : null}
      <MachineList machines={machines} units={units} acts={acts} onEdit={form.show} />
    </main>
  );
}
