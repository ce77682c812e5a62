import type { PressureKind } from '@/lib/air/air';
import type { Instant } from '@/lib/time/instant';
import type { PressureUnit, TemperatureUnit } from '@/lib/units/choice';
import type { Kelvin, Pascal, Ratio } from '@/lib/units/quantity';

export type ColumnMeaning =
  | 'time'
  | 'date'
  | 'temperature'
  | 'humidity'
  | 'dew-point'
  | 'pressure'
  | 'ignored';

export type Separator = 'tab' | 'semicolon' | 'comma' | 'space';
export type DayOrder = 'day-first' | 'month-first';
export type ClockKind = '24-hour' | 'starts-am' | 'starts-pm';
export type HumidityScale = 'percent' | 'ratio';

export type PasteOptions = {
  /** The local date of the first hour, where the text has no dates. */
  readonly date: string;
  readonly zone: string;
  /** Counts where neither header nor cell says a unit. */
  readonly temperatureUnit: TemperatureUnit;
  readonly pressureUnit: PressureUnit;
  /** Answers to questions a first reading asked; see PasteQuestion. */
  readonly startClock?: string;
  /** Only the columns that were asked about need an answer. */
  readonly columns?: readonly (ColumnMeaning | undefined)[];
  readonly commaIs?: 'separator' | 'decimal';
  readonly dayOrder?: DayOrder;
  readonly clock?: ClockKind;
  readonly humidityScale?: HumidityScale;
};

/** What the text does not say and a person must. Each names the option that answers it. */
export type PasteQuestion =
  /** `startClock`: there are temperatures but no times. */
  | { readonly code: 'no-times' }
  /** `columns`: several columns of bare numbers, or two that seem to hold the same. Counted from 0. */
  | { readonly code: 'which-column'; readonly columns: readonly number[]; readonly sample: readonly string[] }
  /** `commaIs`: 18:00,-12,5 may be one number or two. */
  | { readonly code: 'comma-could-be-decimal'; readonly text: string }
  /** `dayOrder`: 2/1/2027. */
  | { readonly code: 'day-or-month'; readonly text: string }
  /** `clock`: 12:00 is followed by 1:00 and nothing says AM or PM. */
  | { readonly code: 'am-or-pm'; readonly text: string }
  /** `humidityScale`: only 0 and 1 in the column. */
  | { readonly code: 'humidity-scale' };

export type PasteProblem =
  | { readonly code: 'empty' }
  | { readonly code: 'too-long'; readonly limit: number }
  | { readonly code: 'too-many-lines'; readonly limit: number }
  | { readonly code: 'too-many-columns'; readonly limit: number }
  | { readonly code: 'unknown-zone'; readonly zone: string }
  | { readonly code: 'not-a-date'; readonly text: string }
  | { readonly code: 'not-a-clock'; readonly text: string }
  | { readonly code: 'no-temperature-column' }
  /** The header says one unit, a cell another. */
  | {
      readonly code: 'unit-conflict';
      readonly column: number;
      readonly header: string;
      readonly cell: string;
    }
  /** Most times are earlier than the one before: latest first? */
  | { readonly code: 'times-run-backwards' }
  | { readonly code: 'no-hours'; readonly skipped: readonly SkippedLine[] }
  | { readonly code: 'ask'; readonly questions: readonly PasteQuestion[] };

/** Why a line gave no hour. Lines count from 1. */
export type SkippedLine = {
  readonly line: number;
  readonly text: string;
  readonly reason:
    | 'above-header'
    | 'no-temperature'
    | 'temperature-not-a-number'
    | 'temperature-out-of-range'
    | 'no-time'
    | 'time-not-readable'
    | 'missing-hour'
    | 'same-time-as-before';
};

/** A cell that was left out while the rest of its line counts. */
export type DroppedCell = {
  readonly line: number;
  readonly text: string;
  readonly reason:
    | 'humidity-not-a-number'
    | 'humidity-out-of-range'
    | 'dew-point-not-a-number'
    | 'dew-point-out-of-range'
    | 'dew-point-above-temperature'
    | 'pressure-not-a-number'
    | 'pressure-out-of-range';
};

export type PastedRow = {
  readonly line: number;
  readonly at: Instant;
  readonly temperature: Kelvin;
  readonly relativeHumidity: Ratio | null;
  readonly dewPoint: Kelvin | null;
  readonly pressure: Pascal | null;
  /** The clock shows this time twice that night and only one such line is there: taken as the earlier. */
  readonly doubledHour: boolean;
};

/** `size`: no other unit gives a pressure there can be. */
export type UnitFrom = 'cell' | 'header' | 'size' | 'assumed';

export type UnderstoodColumn = {
  readonly column: number;
  readonly header: string | null;
  readonly meaning: ColumnMeaning;
  /** null for times, dates and ignored columns. */
  readonly unit: string | null;
  readonly unitFrom: UnitFrom | null;
};

export type Understood = {
  readonly separator: Separator;
  readonly decimal: 'point' | 'comma' | null;
  /** The table stood on its side: one line of times, one of temperatures. */
  readonly turned: boolean;
  readonly columns: readonly UnderstoodColumn[];
  readonly times: 'with-offset' | 'with-date' | 'clock-only' | 'counted-from-start';
  readonly dayOrder: DayOrder | null;
  /** What the header says about the pressure; null: to be asked. */
  readonly pressureKind: PressureKind | null;
};

export type PastedHours = {
  /** In order of time, no time twice. */
  readonly rows: readonly PastedRow[];
  readonly understood: Understood;
  readonly skipped: readonly SkippedLine[];
  readonly dropped: readonly DroppedCell[];
};
