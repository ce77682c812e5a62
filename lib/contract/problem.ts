import type { AirProblem } from '@/lib/air/air';
import type { HardwareProblem } from '@/lib/carb/hardware';
import type { MarkingProblem } from '@/lib/carb/jets';
import type { PlanProblem } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';

/** Where in the sent data a problem sits: `['machine', 'box', 2, 'size']`. */
export type Path = readonly (string | number)[];

/** What is wrong with given data. Sentences for all but `field` live in lib/words. */
export type ContractReason =
  /** A field of the wrong kind or outside its range; the schema's own words. */
  | { readonly code: 'field'; readonly message: string }
  | AirProblem
  | PlanProblem
  | MarkingProblem
  | HardwareProblem
  | { readonly code: 'same-hour-twice'; readonly at: Instant }
  | { readonly code: 'jet-not-in-list'; readonly size: number }
  /** A setting names a different number of jets than the machine has carburettors. */
  | { readonly code: 'mains-do-not-fit'; readonly mains: number; readonly carburettors: number }
  | { readonly code: 'trim-not-there' }
  | {
      readonly code: 'trim-out-of-range';
      readonly trim: number;
      readonly lowest: number;
      readonly highest: number;
    }
  | { readonly code: 'no-such-run'; readonly run: number; readonly runs: number }
  /** Longer than one event: most likely a slip in a date. */
  | { readonly code: 'event-too-long'; readonly days: number; readonly limit: number }
  | { readonly code: 'hours-too-far-apart'; readonly days: number; readonly limit: number }
  | { readonly code: 'run-made-twice'; readonly run: number }
  | { readonly code: 'settings-do-not-match-runs'; readonly settings: number; readonly runs: number };

export type ContractProblem = { readonly path: Path; readonly reason: ContractReason };

/** `machine.box[2].size`, as a person who writes JSON reads it. */
export function pathText(path: Path): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    return text === '' ? step : `${text}.${step}`;
  }, '');
}

/** RFC 6901 pointer as a URI fragment: `#/machine/box/2/size`. */
export function pathPointer(path: Path): string {
  const steps = path.map((step) =>
    encodeURIComponent(String(step).replaceAll('~', '~0').replaceAll('/', '~1')),
  );
  return ['#', ...steps].join('/');
}
