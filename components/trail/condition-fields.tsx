import { groupFields } from '@/components/draft/fields-of';
import { Button } from '@/components/ui/button';
import { CONDITION, type ConditionDraft } from '@/lib/fields/trail/trail-rows';
import { formatNumber } from '@/lib/units/format';
import { FieldLine } from './field-line';
import { stationOf } from './read-seasons';
import styles from './trail.module.css';
import type { TrailFields } from './trail-fields';

type ConditionFieldsProps = Pick<TrailFields, 'draft' | 'bind'> & {
  readonly index: number;
  readonly condition: ConditionDraft;
};

/** One kind of day: its name and how cold it is. */
export function ConditionFields({ index, condition, draft, bind }: ConditionFieldsProps) {
  const { name } = condition;
  const station = stationOf(condition);
  const change = (
    step: string | null,
    next: (days: readonly ConditionDraft[]) => readonly ConditionDraft[],
  ) => draft.change(step, (before) => ({ ...before, conditions: next(before.conditions) }));
  const field = groupFields({
    group: CONDITION,
    values: condition,
    units: draft.value.units,
    prefix: `conditions.${index}.`,
    bind,
    put: (step, values) =>
      change(step, (days) => days.map((each, i) => (i === index ? { ...each, ...values } : each))),
  });
  return (
    <FieldLine name={`Day ${index + 1}`} className={styles.conditionRow}>
      {field('name', { label: `Day ${index + 1}` })}
      {field('temperature', {
        hint:
          station === null
            ? undefined
            : `With a station pressure of ${formatNumber(station)} hPa, as in past winters.`,
      })}
      <Button
        aria-label={`Remove ${name === '' ? `day ${index + 1}` : name}`}
        onClick={() => change(null, (days) => days.filter((_, i) => i !== index))}
      >
        Remove
      </Button>
    </FieldLine>
  );
}
