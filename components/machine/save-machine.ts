import type { SaveOutcome } from '@/components/draft/use-form';
import type { MachineJson } from '@/lib/contract/machine';
import { recordWithMachine } from '@/lib/store/record-with-machine';
import type { MachineRecord, Stored } from '@/lib/store/records';
import type { Store } from '@/lib/store/store-type';

/** How a save ended: what stands now, or a sentence and what the next try is based on. */
export type Saved =
  | { readonly ok: true; readonly before: Stored<MachineRecord>; readonly after: Stored<MachineRecord> }
  | { readonly ok: false; readonly outcome: SaveOutcome; readonly basedOn: Stored<MachineRecord> };

/**
 * Writes an edited machine on top of the record the form was opened from. Where another tab wrote meanwhile nothing
 * is overwritten unseen: the sentence says so, and a second save goes on top of what stands there now.
 */
export async function saveMachine(
  store: Store,
  basedOn: Stored<MachineRecord>,
  machine: MachineJson,
): Promise<Saved> {
  const { id, revision, value } = basedOn;
  const written = await store.put('machines', id, recordWithMachine(value, machine), revision);
  if (written.ok) return { ok: true, before: basedOn, after: written.value };
  if (written.reason.code !== 'conflict')
    return {
      ok: false,
      basedOn,
      outcome: 'The browser would not keep it. Your typing is still here; try again.',
    };
  const { theirs } = written.reason;
  if (theirs === null)
    return {
      ok: false,
      basedOn: { ...basedOn, revision: 0 },
      outcome:
        'This machine was deleted in another tab. Go back to the list, undo that there, and save again.',
    };
  return {
    ok: false,
    basedOn: theirs,
    outcome: `Another tab changed this machine while you typed; it is now called ${theirs.value.machine.name}. Save again to put yours on top, or cancel to see the other one.`,
  };
}
