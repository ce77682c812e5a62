import { Button } from '@/components/ui/button';
import { ButtonRow, Stack } from '@/components/ui/stack';
import { NEW_CONDITION } from '@/lib/fields/trail/trail-rows';
import { ConditionFields } from './condition-fields';
import { PastWinters } from './past-winters';
import styles from './trail.module.css';
import type { TrailFields } from './trail-fields';

/** More columns than this cannot be compared at a glance, least of all on a phone. */
const MOST_CONDITIONS = 6;

/** Which kinds of day stand side by side: typed, or from the place's own past winters. */
export function DaysForm({ draft, bind, field }: TrailFields) {
  const { conditions } = draft.value;
  const add = () =>
    draft.change(null, (before) => ({ ...before, conditions: [...before.conditions, NEW_CONDITION] }));
  return (
    <Stack>
      {field('elevation')}
      <div className={styles.rows}>
        {conditions.map((condition, i) => (
          <ConditionFields
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own and keep their order
            key={i}
            index={i}
            condition={condition}
            draft={draft}
            bind={bind}
          />
        ))}
      </div>
      <ButtonRow>
        <Button disabled={conditions.length >= MOST_CONDITIONS} onClick={add}>
          Add a day
        </Button>
      </ButtonRow>
      <PastWinters draft={draft} most={MOST_CONDITIONS} />
    </Stack>
  );
}
