import type { BoxTextProblem } from '@/lib/carb/box-text';
import type { ColumnsProblem } from '@/lib/table/columns';
import type { TableProblem } from '@/lib/table/read-table';
import type { EntryProblem } from '@/lib/units/entry-number';
import type { ContractProblem } from './problem';

export type RosterColumn =
  | 'bib'
  | 'name'
  | 'machine'
  | 'class'
  | 'mains'
  | 'box'
  | 'shared box'
  | 'marking'
  | 'temperature'
  | 'elevation'
  | 'station pressure'
  | 'details';

/** Why a pasted text is no table of racers at all. */
export type RosterTableProblem = TableProblem | ColumnsProblem<RosterColumn>;

/** Why one line is no racer. */
export type RosterLineProblem =
  | { readonly code: 'name-missing' }
  /** A bib of more than eight characters. */
  | { readonly code: 'bib'; readonly text: string }
  /** What a file of ours carries beside its columns was changed so that it cannot be read. */
  | { readonly code: 'details' }
  | { readonly code: 'too-many-cells' }
  | { readonly code: 'mains' | 'box'; readonly problem: BoxTextProblem }
  | {
      readonly code: 'temperature' | 'elevation' | 'station pressure';
      readonly problem: EntryProblem;
    }
  | { readonly code: 'marking'; readonly text: string }
  | { readonly code: 'machine'; readonly problems: readonly ContractProblem[] };
