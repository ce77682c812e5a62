'use client';

import { useMemo } from 'react';
import type { FormState } from '@/components/draft/use-form';
import { Button } from '@/components/ui/button';
import { FieldError } from '@/components/ui/field';
import { type Option, Select } from '@/components/ui/select';
import { TextField } from '@/components/ui/text-field';
import { MOST_RUNS } from '@/lib/plan/judgement';
import { addDays } from '@/lib/time/local';
import { dateWords } from '@/lib/words/date-words';
import { withAddedRun, withoutRun, withRun } from './edit-runs';
import type { RunDraft } from './event-draft';
import { runFieldLabel } from './event-labels';
import { type PlacedRun, placeRuns } from './place-runs';
import styles from './run-list.module.css';
import type { EventSectionProps } from './section-props';

/** The runs one by one. */
export function RunList({ draft, form }: EventSectionProps) {
  const { runs, date } = draft.value;
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
            onChange={(key, text) =>
              draft.change(`runs.${run.key}.${key}`, (before) => withRun(before, index, { [key]: text }))
            }
            onRemove={() => draft.change(null, (before) => withoutRun(before, index))}
          />
        );
      })}
      <FieldError id="runs-error">{form.errors.runs}</FieldError>
      <Button
        name="runs"
        disabled={runs.length >= MOST_RUNS}
        onClick={() => draft.change(null, withAddedRun)}
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
  readonly onChange: (key: 'name' | 'start' | 'end' | 'day' | 'which', text: string) => void;
  readonly onRemove: () => void;
};

function RunRow({ index, run, placed, date, form, onChange, onRemove }: RunRowProps) {
  const title = `Run ${index + 1}`;
  const field = (key: 'name' | 'start' | 'end' | 'day' | 'which') => ({
    ...form.field(`runs.${index}.${key}`),
    label: runFieldLabel(key),
  });
  const text = (key: 'name' | 'start' | 'end', placeholder: string) => (
    <TextField
      {...field(key)}
      placeholder={placeholder}
      autoComplete="off"
      value={run[key]}
      onChange={(next) => onChange(key, next)}
    />
  );
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
        {text('name', title)}
        {text('start', '19:00')}
        {text('end', '6 min')}
        <Select
          {...field('day')}
          value={run.day}
          options={dayOptions(run, placed, date)}
          onChange={(day) => onChange('day', day)}
        />
        {placed?.doubled ? (
          <Select
            {...field('which')}
            value={run.which}
            options={WHICH}
            onChange={(which) => onChange('which', which)}
          />
        ) : null}
      </div>
    </div>
  );
}

const WHICH: readonly Option<RunDraft['which']>[] = [
  { value: '', label: 'By the order of the runs' },
  { value: 'first', label: 'Before the clocks go back' },
  { value: 'second', label: 'After the clocks go back' },
];

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
