import type { DraftState } from '@/components/draft/use-draft';
import { Notice } from '@/components/ui/notice';
import { Select } from '@/components/ui/select';
import { Way } from '@/components/ui/way';
import type { TrailDraft } from '@/lib/fields/trail/trail-rows';
import styles from './trail.module.css';
import type { TrailMachine } from './use-trail-machine';

type MachineSectionProps = {
  readonly draft: DraftState<TrailDraft>;
  readonly machine: TrailMachine;
};

/** Which machine the page is about. */
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
      </div>
      {invented ? (
        <Notice title="This machine is invented." act={<Way href="/machines?edit=first">Add yours</Way>} />
      ) : null}
    </div>
  );
}
