import type { DraftState } from '@/components/draft/use-draft';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { Select } from '@/components/ui/select';
import { ButtonRow } from '@/components/ui/stack';
import type { TrailDraft } from '@/lib/fields/trail/trail-rows';
import styles from './trail.module.css';
import type { TrailMachine } from './use-trail-machine';

type MachineSectionProps = {
  readonly draft: DraftState<TrailDraft>;
  readonly machine: TrailMachine;
};

/** Which machine the page is about, and the way back from what was typed on it. */
export function MachineSection({ draft, machine }: MachineSectionProps) {
  const { id, invented, choices } = machine;
  return (
    <div className={styles.machine}>
      <div className={styles.choose}>
        <Select
          label="Machine"
          value={id}
          options={choices.map((choice) => ({ value: choice.id, label: choice.name }))}
          onChange={(machineId) => draft.change(null, (before) => ({ ...before, machineId }))}
        />
        <ButtonRow>
          <Button onClick={draft.undo} disabled={!draft.canUndo}>
            Undo
          </Button>
          <Button kind="quiet" onClick={draft.startOver}>
            Start over
          </Button>
        </ButtonRow>
      </div>
      {invented ? (
        <Notice title="This machine is invented.">
          <p>
            It shows what the page does. Add yours on the <a href="/machines?edit=new">machines</a> page: its
            mains, pilot, needle and the air they were right in.
          </p>
        </Notice>
      ) : null}
    </div>
  );
}
