import type { ColumnsProblem } from '@/lib/table/columns';
import type { TableProblem } from '@/lib/table/read-table';
import type { ContractReason } from './problem';

/** Why what was found cylinder by cylinder cannot be kept. */
export type CylinderProblem =
  | { readonly code: 'cylinder-verdict-unknown'; readonly line: number; readonly text: string }
  | {
      readonly code: 'cylinder-verdicts-do-not-fit';
      readonly line: number;
      readonly verdicts: number;
      readonly mains: number;
    }
  /** The run's own verdict is not that of its leanest cylinder. */
  | { readonly code: 'cylinder-verdicts-disagree'; readonly line: number; readonly leanest: string };

/** Why a file, or a line of it, is no run log. Nothing is taken in where there is any. */
export type LogCsvProblem =
  | TableProblem
  | ColumnsProblem<string>
  | { readonly code: 'too-many-cells'; readonly line: number }
  | { readonly code: 'unknown-machine'; readonly line: number; readonly machine: string }
  /** Two machines share the name, and no id says which. */
  | { readonly code: 'which-machine'; readonly line: number; readonly machine: string }
  | { readonly code: 'id-twice'; readonly line: number; readonly id: string }
  | { readonly code: 'not-a-number'; readonly line: number; readonly column: string; readonly text: string }
  | {
      readonly code: 'bad-value';
      readonly line: number;
      readonly column: string;
      readonly reason: ContractReason;
    }
  | CylinderProblem;
