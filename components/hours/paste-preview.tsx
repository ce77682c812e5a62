'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Choice } from '@/components/ui/choice';
import { Notice } from '@/components/ui/notice';
import { type Column, Table } from '@/components/ui/table';
import type { PressureKind } from '@/lib/air/air';
import { hasPressure } from '@/lib/fields/hours/take-pasted';
import type { PastedHours, PastedRow } from '@/lib/hours/pasted';
import type { ClockZone } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { formatPercent, formatPressure, formatTemperature } from '@/lib/units/format';
import { counted } from '@/lib/words/listing';
import { droppedCellSentence, skippedLineSentence } from '@/lib/words/paste';
import { PRESSURE_CHOICES, PRESSURE_NAMES } from '@/lib/words/pressure-kinds';
import { clockText } from '@/lib/words/times';
import { understoodWords } from '@/lib/words/understood-hours';
import styles from './paste-preview.module.css';

type PastePreviewProps = {
  readonly pasted: PastedHours;
  readonly units: UnitChoice;
  readonly zone: ClockZone;
  /** The kind chosen for the night so far. */
  readonly kind: PressureKind;
  readonly onAccept: (kind: PressureKind) => void;
  /** Forgets the answers given about the text. */
  readonly onAskAgain: (() => void) | null;
};

/** What was understood of the pasted text, for the eye to check before it is taken over. */
export function PastePreview({ pasted, units, zone, kind, onAccept, onAskAgain }: PastePreviewProps) {
  const { rows, skipped, dropped, understood } = pasted;
  const [chosen, setChosen] = useState<PressureKind | null>(null);
  const pressureKind = chosen ?? understood.pressureKind ?? kind;
  const notes = [...skipped.map(skippedLineSentence), ...dropped.map(droppedCellSentence)];
  return (
    <div className={styles.preview}>
      <p>{understoodWords(pasted, units, zone)}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard (WCAG 2.1.1) */}
      <section className={styles.rows} aria-label="Hours that were understood" tabIndex={0}>
        <Table
          caption="Hours that were understood"
          captionHidden
          columns={columnsOf(rows, { units, zone, pressureKind })}
          rows={rows}
          rowKey={(row) => String(row.at)}
        />
      </section>
      {notes.length > 0 ? (
        <Notice tone="caution" title={`${counted(notes.length, 'piece')} left out.`}>
          <ul>
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
      {hasPressure(pasted) ? (
        <Choice
          label="Which pressure is in the table?"
          value={pressureKind}
          options={KINDS}
          onChange={setChosen}
        />
      ) : null}
      <div className={styles.acts}>
        <Button kind="primary" onClick={() => onAccept(pressureKind)}>
          Use {rows.length === 1 ? 'this hour' : `these ${rows.length} hours`}
        </Button>
        {onAskAgain === null ? null : <Button onClick={onAskAgain}>Ask me again</Button>}
      </div>
    </div>
  );
}

const KINDS: readonly { readonly value: PressureKind; readonly label: string }[] = [
  ...PRESSURE_CHOICES,
  { value: 'standard', label: 'Leave it out' },
];

function columnsOf(
  rows: readonly PastedRow[],
  {
    units,
    zone,
    pressureKind,
  }: { readonly units: UnitChoice; readonly zone: ClockZone; readonly pressureKind: PressureKind },
): readonly Column<PastedRow>[] {
  const has = (key: 'relativeHumidity' | 'dewPoint' | 'pressure'): boolean =>
    rows.some((row) => row[key] !== null);
  const optional = (
    key: 'relativeHumidity' | 'dewPoint' | 'pressure',
    column: Column<PastedRow>,
  ): readonly Column<PastedRow>[] => (has(key) ? [{ ...column, figures: true }] : []);
  return [
    { head: 'Hour', names: true, cell: (row) => clockText(row.at, { zone, from: rows[0]?.at ?? row.at }) },
    { head: 'Temperature', figures: true, cell: (row) => formatTemperature(row.temperature, units, 1) },
    ...optional('relativeHumidity', {
      head: 'Humidity',
      cell: (row) => (row.relativeHumidity === null ? '' : formatPercent(row.relativeHumidity)),
    }),
    ...optional('dewPoint', {
      head: 'Dew point',
      cell: (row) => (row.dewPoint === null ? '' : formatTemperature(row.dewPoint, units, 1)),
    }),
    ...optional('pressure', {
      head: pressureKind === 'standard' ? 'Pressure, left out' : PRESSURE_NAMES[pressureKind],
      cell: (row) => (row.pressure === null ? '' : formatPressure(row.pressure, units)),
    }),
  ];
}
