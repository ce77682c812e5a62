import type { DraftState } from '@/components/draft/use-draft';
import { Button } from '@/components/ui/button';
import { NumberField } from '@/components/ui/number-field';
import { TextField } from '@/components/ui/text-field';
import type { UnitChoice } from '@/lib/units/choice';
import { formatNumber } from '@/lib/units/format';
import { stationOf } from './read-seasons';
import styles from './trail.module.css';
import type { ConditionDraft, TrailDraft } from './trail-draft';

type ConditionFieldsProps = {
  readonly index: number;
  readonly condition: ConditionDraft;
  readonly units: UnitChoice;
  readonly error: string | undefined;
  readonly draft: DraftState<TrailDraft>;
};

/** One kind of day: its name and how cold it is. */
export function ConditionFields({ index, condition, units, error, draft }: ConditionFieldsProps) {
  const { name, temperature } = condition;
  const station = stationOf(condition);
  const set = (change: Partial<ConditionDraft>) =>
    draft.change(`conditions.${index}.${Object.keys(change).join()}`, (before) => ({
      ...before,
      conditions: before.conditions.map((each, i) => (i === index ? { ...each, ...change } : each)),
    }));
  return (
    <div className={styles.conditionRow}>
      <TextField
        label={`Day ${index + 1}`}
        maxLength={40}
        value={name}
        onChange={(text) => set({ name: text })}
      />
      <NumberField
        label="Temperature"
        signed
        unit={`°${units.temperature}`}
        value={temperature}
        error={error}
        hint={
          station === null
            ? undefined
            : `With a station pressure of ${formatNumber(station)} hPa, as in past winters.`
        }
        onChange={(text) => set({ temperature: text })}
      />
      <Button
        aria-label={`Remove ${name === '' ? `day ${index + 1}` : name}`}
        onClick={() =>
          draft.change(null, (before) => ({
            ...before,
            conditions: before.conditions.filter((_, i) => i !== index),
          }))
        }
      >
        Remove
      </Button>
    </div>
  );
}
