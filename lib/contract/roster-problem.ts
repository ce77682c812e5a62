import type { BoxTextProblem } from '@/lib/carb/box-text';
import type { ColumnsProblem } from '@/lib/table/columns';
import type { TableProblem } from '@/lib/table/read-table';
import type { EntryProblem } from '@/lib/units/entry-number';
import type { ContractProblem } from './problem';

export type RosterColumn =
  | 'name'
  | 'machine'
  | 'class'
  | 'mains'
  | 'box'
  | 'marking'
  | 'temperature'
  | 'elevation'
  | 'station pressure';

/** Why a pasted text is no table of racers at all. */
export type RosterTableProblem = TableProblem | ColumnsProblem<RosterColumn>;

/** Why one line is no racer. */
export type RosterLineProblem =
  | { readonly code: 'name-missing' }
  | { readonly code: 'too-many-cells' }
  | { readonly code: 'mains' | 'box'; readonly problem: BoxTextProblem }
  | {
      readonly code: 'temperature' | 'elevation' | 'station pressure';
      readonly problem: EntryProblem;
    }
  | { readonly code: 'marking'; readonly text: string }
  | { readonly code: 'machine'; readonly problems: readonly ContractProblem[] };
