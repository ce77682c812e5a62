import type { FieldErrors } from '@/components/draft/field-reader';
import type { DraftState } from '@/components/draft/use-draft';
import { Button } from '@/components/ui/button';
import { NumberField } from '@/components/ui/number-field';
import { ButtonRow, Stack } from '@/components/ui/stack';
import { ConditionFields } from './condition-fields';
import { PastWinters } from './past-winters';
import styles from './trail.module.css';
import { NEW_CONDITION, type TrailDraft } from './trail-draft';

/** More columns than this cannot be compared at a glance, least of all on a phone. */
const MOST_CONDITIONS = 6;

type DaysFormProps = { readonly draft: DraftState<TrailDraft>; readonly errors: FieldErrors };

/** Which kinds of day stand side by side: typed, or from the place's own past winters. */
export function DaysForm({ draft, errors }: DaysFormProps) {
  const { units, elevation, conditions } = draft.value;
  const add = () =>
    draft.change(null, (before) => ({ ...before, conditions: [...before.conditions, NEW_CONDITION] }));
  return (
    <Stack>
      <NumberField
        label="Elevation of the place"
        hint="Thin air asks for less of everything. The standard pressure of this height stands in."
        unit={units.elevation}
        signed
        value={elevation}
        error={errors.elevation}
        onChange={(text) => draft.change('elevation', (before) => ({ ...before, elevation: text }))}
      />
      <div className={styles.rows}>
        {conditions.map((condition, i) => (
          <ConditionFields
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own and keep their order
            key={i}
            index={i}
            condition={condition}
            units={units}
            error={errors[`conditions.${i}.temperature`]}
            draft={draft}
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
