'use client';

import { type ClipboardEvent, type KeyboardEvent, memo, useId } from 'react';
import type { FieldBinding } from '@/components/draft/use-form';
import { Button } from '@/components/ui/button';
import { classNames } from '@/components/ui/class-names';
import { FieldError } from '@/components/ui/field';
import { flipSign } from '@/components/ui/flip-sign';
import type { PressureKind } from '@/lib/air/air';
import type { RowValue } from '@/lib/fields/hours/between';
import type { HourRow } from '@/lib/fields/hours/hours-draft';
import { HOUR } from '@/lib/fields/hours/hours-rows';
import type { UnitChoice } from '@/lib/units/choice';
import { formatTemperature } from '@/lib/units/format';
import { PRESSURE_NAMES } from '@/lib/words/pressure-kinds';
import styles from './hour-grid.module.css';

type Column = keyof typeof HOUR.rows;

type HourRowProps = {
  readonly clock: string;
  /** Its place among the hours. */
  readonly index: number;
  readonly row: HourRow;
  readonly value: RowValue;
  readonly units: UnitChoice;
  readonly humidity: boolean;
  /** Of which kind the pressures are; null where none are typed by the hour. */
  readonly pressure: Exclude<PressureKind, 'standard'> | null;
  readonly field: (column: Column) => FieldBinding;
  readonly onChange: (column: Column, text: string) => void;
  /** Several lines were pasted into the temperature. */
  readonly onPasteLines: (text: string) => void;
  readonly onEnter: () => void;
};

const COLUMNS: readonly Column[] = ['temperature', 'humidity', 'pressure'];

/** Whether two are drawn alike and do the same: what a row calls goes by its place and its hour alone. */
const areAlike = (a: HourRowProps, b: HourRowProps): boolean =>
  a.row === b.row &&
  a.index === b.index &&
  a.clock === b.clock &&
  a.units === b.units &&
  a.humidity === b.humidity &&
  a.pressure === b.pressure &&
  kindWords(a.value, a.units) === kindWords(b.value, b.units) &&
  betweenText(a.value, a.units) === betweenText(b.value, b.units) &&
  COLUMNS.every((column) => a.field(column).error === b.field(column).error);

/**
 * One hour: its temperature, typed or filled in between, and on request its humidity and pressure. Drawn anew only
 * where it changed: a night of 96 of them is drawn with every key.
 */
export const HourRowFields = memo(function HourRowFields(props: HourRowProps) {
  const { clock, row, value, units, humidity, pressure, field, onChange } = props;
  return (
    <div className={classNames(styles.row, value.kind === 'typed' && styles.typed)}>
      <TemperatureCell {...props} />
      {humidity ? (
        <SmallCell
          label={`${HOUR.rows.humidity.label} at ${clock}`}
          unit="%"
          binding={field('humidity')}
          value={row.humidity}
          onChange={(text) => onChange('humidity', text)}
        />
      ) : null}
      {pressure !== null ? (
        <SmallCell
          label={`${PRESSURE_NAMES[pressure]} at ${clock}`}
          unit={units.pressure}
          binding={field('pressure')}
          value={row.pressure}
          onChange={(text) => onChange('pressure', text)}
        />
      ) : null}
    </div>
  );
}, areAlike);

function TemperatureCell({ clock, row, value, units, field, onChange, onPasteLines, onEnter }: HourRowProps) {
  const id = useId();
  const { name, error, onBlur } = field('temperature');
  const change = (text: string): void => onChange('temperature', text);
  function paste(event: ClipboardEvent) {
    const text = event.clipboardData.getData('text');
    if (!/[\n\t]/.test(text.trim())) return;
    event.preventDefault();
    onPasteLines(text);
  }
  function key(event: KeyboardEvent) {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    onEnter();
  }
  return (
    <div className={styles.temperature}>
      <label htmlFor={id} className={styles.clock}>
        {clock}
      </label>
      <Button
        className={styles.sign}
        aria-label={`Change sign at ${clock}`}
        onClick={() => change(flipSign(row.temperature))}
      >
        +/−
      </Button>
      <input
        id={id}
        name={name}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        className={styles.input}
        placeholder={betweenText(value, units)}
        aria-describedby={`${id}-kind${error ? ` ${id}-error` : ''}`}
        aria-invalid={error ? true : undefined}
        value={row.temperature}
        onChange={(event) => change(event.target.value)}
        onBlur={onBlur}
        onPaste={paste}
        onKeyDown={key}
      />
      <span id={`${id}-kind`} className={styles.kind}>
        {kindWords(value, units)}
      </span>
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </div>
  );
}

const betweenText = (value: RowValue, units: UnitChoice): string =>
  value.kind === 'between' ? formatTemperature(value.temperature, units, 1) : '';

function kindWords(value: RowValue, units: UnitChoice): string {
  switch (value.kind) {
    case 'typed':
      return `°${units.temperature} typed`;
    case 'between':
      return 'in between';
    case 'unreadable':
      return 'not read';
    case 'none':
      return 'no value';
  }
}

type SmallCellProps = {
  readonly label: string;
  readonly unit: string;
  readonly binding: FieldBinding;
  readonly value: string;
  readonly onChange: (text: string) => void;
};

function SmallCell({ label, unit, binding, value, onChange }: SmallCellProps) {
  const id = useId();
  const { name, error, onBlur } = binding;
  return (
    <div className={styles.small}>
      <input
        name={name}
        type="text"
        inputMode="decimal"
        autoComplete="off"
        className={styles.input}
        aria-label={label}
        aria-describedby={error ? `${id}-error` : undefined}
        aria-invalid={error ? true : undefined}
        value={value}
        onChange={(event) => onChange(event.target.value)}
        onBlur={onBlur}
      />
      <span className={styles.kind}>{unit}</span>
      <FieldError id={`${id}-error`}>{error}</FieldError>
    </div>
  );
}
