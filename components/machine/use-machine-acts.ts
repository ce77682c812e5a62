'use client';

import { useMemo } from 'react';
import type { SaveOutcome } from '@/components/draft/use-form';
import { newId } from '@/components/store/new-id';
import { useOpenedStore } from '@/components/store/store-provider';
import { type ToastWords, useToast } from '@/components/ui/toast';
import type { MachineJson } from '@/lib/contract/machine';
import { duplicateOf, newMachineRecord } from '@/lib/store/new-machine-record';
import type { MachineRecord, Stored } from '@/lib/store/records';
import type { Store } from '@/lib/store/store-type';

export type MachineActs = {
  readonly add: (machine: MachineJson) => Promise<SaveOutcome>;
  readonly duplicate: (machine: Stored<MachineRecord>) => void;
  readonly remove: (machine: Stored<MachineRecord>) => void;
};

type Tools = { readonly store: Store; readonly say: (words: ToastWords) => void };

/** What can be done with the machines of the store; each act can be undone. null until the store is open. */
export function useMachineActs(): MachineActs | null {
  const opened = useOpenedStore();
  const say = useToast();
  return useMemo(() => {
    if (opened === null) return null;
    const tools: Tools = { store: opened.store, say };
    return {
      add: (machine) => addRecord(tools, newMachineRecord(machine), `${machine.name} is added.`),
      duplicate: ({ value }) => {
        const copy = duplicateOf(value);
        void addRecord(tools, copy, `${copy.machine.name} is added.`).then((refused) => {
          if (refused !== undefined) say({ text: refused });
        });
      },
      remove: (machine) => void removeRecord(tools, machine),
    };
  }, [opened, say]);
}

const NOT_KEPT = 'That was not kept. Look at the list again and repeat it.';

async function addRecord({ store, say }: Tools, record: MachineRecord, words: string): Promise<SaveOutcome> {
  const id = newId();
  const written = await store.put('machines', id, record, null);
  if (!written.ok) return NOT_KEPT;
  const { revision } = written.value;
  say({ text: words, act: { label: 'Undo', do: () => void store.remove('machines', id, revision) } });
  return undefined;
}

async function removeRecord(
  { store, say }: Tools,
  { id, revision, value }: Stored<MachineRecord>,
): Promise<void> {
  const removed = await store.remove('machines', id, revision);
  if (!removed.ok) {
    say({
      text: `${value.machine.name} was changed or removed elsewhere meanwhile. Look at the list again.`,
    });
    return;
  }
  say({
    text: `${value.machine.name} is deleted.`,
    act: { label: 'Undo', do: () => void store.restore('machines', removed.value) },
  });
}
