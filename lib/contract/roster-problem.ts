import type { BoxTextProblem } from '@/lib/carb/box-text';
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
export type RosterTableProblem =
  | { readonly code: 'empty' }
  | { readonly code: 'too-large'; readonly limit: number }
  | { readonly code: 'too-many-lines'; readonly limit: number }
  | { readonly code: 'quotes-broken' }
  | { readonly code: 'columns-missing'; readonly columns: readonly RosterColumn[] }
  | { readonly code: 'column-twice'; readonly column: RosterColumn };

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
