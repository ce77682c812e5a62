'use client';

import { useMemo } from 'react';
import { groupFields } from '@/components/draft/fields-of';
import type { FormState } from '@/components/draft/use-form';
import { useHours } from '@/components/store/use-clock-zone';
import { Button } from '@/components/ui/button';
import { FieldError } from '@/components/ui/field';
import type { Option } from '@/components/ui/select';
import { withAddedRun, withoutRun, withRun } from '@/lib/fields/event/edit-runs';
import { RUN, type RunDraft } from '@/lib/fields/event/event-rows';
import { type PlacedRun, placeRuns } from '@/lib/fields/event/place-runs';
import { MOST_RUNS } from '@/lib/plan/judgement';
import { addDays } from '@/lib/time/local';
import type { UnitChoice } from '@/lib/units/choice';
import { dateWords } from '@/lib/words/date-words';
import type { EventFields } from './event-fields';
import styles from './run-list.module.css';

/** The runs one by one. */
export function RunList({ draft, form }: Pick<EventFields, 'draft' | 'form'>) {
  const { runs, date, units } = draft.value;
  const hours = useHours();
  const placed = useMemo(() => placeRuns(runs, draft.value), [runs, draft.value]);
  return (
    <div className={styles.list}>
      {runs.map((run, index) => {
        const place = placed[index];
        return (
          <RunRow
            key={run.key}
            index={index}
            run={run}
            placed={place?.ok ? place.value : null}
            date={date}
            form={form}
            units={units}
            onChange={(step, values) => draft.change(step, (before) => withRun(before, index, values))}
            onRemove={() => draft.change(null, (before) => withoutRun(before, index))}
          />
        );
      })}
      <FieldError id="runs-error">{form.errors.runs}</FieldError>
      <Button
        name="runs"
        disabled={runs.length >= MOST_RUNS}
        onClick={() => draft.change(null, (before) => withAddedRun(before, hours))}
      >
        Add a run
      </Button>
    </div>
  );
}

type RunRowProps = {
  readonly index: number;
  readonly run: RunDraft;
  /** null while its times cannot be read. */
  readonly placed: PlacedRun | null;
  readonly date: string;
  readonly form: FormState;
  readonly units: UnitChoice;
  readonly onChange: (step: string | null, values: Partial<RunDraft>) => void;
  readonly onRemove: () => void;
};

function RunRow({ index, run, placed, date, form, units, onChange, onRemove }: RunRowProps) {
  const title = `Run ${index + 1}`;
  const field = groupFields({
    group: RUN,
    values: run,
    units,
    prefix: `runs.${index}.`,
    bind: form.field,
    put: onChange,
  });
  return (
    // biome-ignore lint/a11y/useSemanticElements: a legend cannot share its line with the button
    <div role="group" aria-label={title} className={styles.run}>
      <div className={styles.head}>
        <span className={styles.title}>{title}</span>
        <Button kind="quiet" aria-label={`Remove run ${index + 1}`} onClick={onRemove}>
          Remove
        </Button>
      </div>
      <div className={styles.fields}>
        {field('name', { placeholder: title })}
        {field('start')}
        {field('end')}
        {field('day', { options: dayOptions(run, placed, date) })}
        {placed?.doubled ? field('which') : null}
      </div>
    </div>
  );
}

/** Days that can be chosen for a run; more for one that is later already. */
const MOST_DAYS_LATER = 4;

function dayOptions(run: RunDraft, placed: PlacedRun | null, date: string): readonly Option<string>[] {
  const named = (day: number): string => dateWords(addDays(date, day) ?? '') ?? `Day ${day + 1}`;
  const last = Math.max(MOST_DAYS_LATER, Number(run.day));
  const byOrder = placed === null || run.day !== '' ? 'By order' : `${named(placed.day)} (by order)`;
  return [
    { value: '', label: byOrder },
    ...Array.from({ length: last + 1 }, (_, day) => ({ value: String(day), label: named(day) })),
  ];
}
