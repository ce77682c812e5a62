'use client';

import { Fragment, useMemo, useState } from 'react';
import { useClockFace, useClockZone, useHours } from '@/components/store/use-clock-zone';
import { Button } from '@/components/ui/button';
import { classNames } from '@/components/ui/class-names';
import { FieldError } from '@/components/ui/field';
import { Notice } from '@/components/ui/notice';
import { ButtonRow } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import { runsFromEvent } from '@/lib/contract/event-from-json';
import { clockOf } from '@/lib/fields/clock-text';
import { rowValues, uncoveredRuns } from '@/lib/fields/hours/between';
import { withClock, withHour, withoutHours, withRow } from '@/lib/fields/hours/edit-rows';
import { type HourRow, rowTime } from '@/lib/fields/hours/hours-draft';
import { rowClock } from '@/lib/fields/hours/hours-labels';
import { minutesToSpare } from '@/lib/plan/delay';
import { type Instant, instant } from '@/lib/time/instant';
import { localDate } from '@/lib/time/zone';
import { dayText } from '@/lib/words/day-text';
import { spareWords } from '@/lib/words/delay';
import { listing } from '@/lib/words/listing';
import styles from './hour-grid.module.css';
import { HourRowFields } from './hour-row';
import type { HoursSectionProps } from './section-props';

type HourGridProps = HoursSectionProps & {
  /** Several lines were pasted into the hour that starts at `at`. */
  readonly onPasteLines: (text: string, at: Instant) => void;
};

/** The night hour by hour: typed temperatures, and what is filled in between them. */
export function HourGrid({ draft, form, event, onPasteLines }: HourGridProps) {
  const { rows, units, humidityByHour, pressureByHour, pressureKind } = draft.value;
  const values = useMemo(() => rowValues(rows, units), [rows, units]);
  const zone = event.timezone;
  const clock = useClockZone(zone);
  const hours = useHours();
  return (
    <div className={classNames(styles.grid, hours === '12' && styles.twelve)}>
      {rows.map((row, index) => (
        <Fragment key={row.at}>
          {startsDay(rows, index, zone) ? <p className={styles.day}>{dayText(rowTime(row), zone)}</p> : null}
          <HourRowFields
            clock={rowClock(row, clock)}
            index={index}
            row={row}
            value={values[index] ?? { kind: 'none' }}
            units={units}
            humidity={humidityByHour}
            pressure={pressureByHour && pressureKind !== 'standard' ? pressureKind : null}
            field={(column) => form.field(`rows.${index}.${column}`)}
            onChange={(column, text) =>
              draft.change(`rows.${row.at}.${column}`, (before) =>
                withRow(before, row.at, { [column]: text }),
              )
            }
            onPasteLines={(text) => onPasteLines(text, rowTime(row))}
            onEnter={() => focusRow(form.ref.current, index + 1)}
          />
        </Fragment>
      ))}
      <FieldError id="rows-error">{form.errors.rows}</FieldError>
      <CoverageNote {...{ draft, event }} />
      <AddHours {...{ draft, event }} />
    </div>
  );
}

function startsDay(rows: readonly HourRow[], index: number, zone: string): boolean {
  const [before, row] = [rows[index - 1], rows[index]];
  if (row === undefined) return false;
  return before === undefined || localDate(rowTime(before), zone) !== localDate(rowTime(row), zone);
}

function focusRow(form: HTMLFormElement | null, index: number): void {
  const field = form?.elements.namedItem(`rows.${index}.temperature`);
  if (field instanceof HTMLElement) field.focus();
}

type NightOf = Pick<HoursSectionProps, 'draft' | 'event'>;

/** Runs outside the typed hours get no plan; better said here than afterwards. */
function CoverageNote({ draft, event }: NightOf) {
  const { rows, units } = draft.value;
  const runs = runsFromEvent(event);
  const uncovered = uncoveredRuns(rows, runs, units);
  const someTyped = rows.some((row) => row.temperature.trim() !== '');
  if (!someTyped) return null;
  if (uncovered.length === 0) return <SpareNote minutes={minutesToSpare(runs, lastTyped(rows))} />;
  return (
    <Notice tone="caution">
      <p>
        No temperature yet for {listing(uncovered.map((run) => run.name))}: the hours reach from the first to
        the last one typed, over at most 12 hours between two of them.
      </p>
    </Notice>
  );
}

const lastTyped = (rows: readonly HourRow[]): Instant =>
  instant(Math.max(0, ...rows.filter((row) => row.temperature.trim() !== '').map(rowTime)));

/** A night that runs late leaves its hours; better said while there is time to type one more. */
function SpareNote({ minutes }: { readonly minutes: number | null }) {
  const words = minutes === null ? null : spareWords(minutes);
  return words === null ? null : <Notice>{words}</Notice>;
}

function AddHours({ draft, event }: NightOf) {
  const { addedClock: clock } = draft.value;
  const [wrong, setWrong] = useState<string>();
  const face = useClockFace();
  function add() {
    const typed = clockOf(clock);
    const next = typed === null ? null : withClock(draft.value, typed, event.timezone);
    if (next === null) return setWrong(`Type a time, such as ${face('19:40')}.`);
    draft.change(null, () => ({ ...next, addedClock: '' }));
    setWrong(undefined);
  }
  return (
    <div className={styles.adding}>
      <ButtonRow>
        <Button onClick={() => draft.change(null, (before) => withHour(before, 'before'))}>
          Hour before
        </Button>
        <Button onClick={() => draft.change(null, (before) => withHour(before, 'after'))}>Hour after</Button>
        <Button onClick={() => draft.change(null, withoutHours)}>Empty all</Button>
      </ButtonRow>
      <div className={styles.addTime}>
        <TextField
          label="A time between the hours"
          error={wrong}
          placeholder={face('19:40')}
          autoComplete="off"
          value={clock}
          onChange={(text) => draft.change('addedClock', (before) => ({ ...before, addedClock: text }))}
          onKeyDown={(key) => {
            if (key.key !== 'Enter') return;
            key.preventDefault();
            add();
          }}
        />
        <Button onClick={add}>Add</Button>
      </div>
    </div>
  );
}
