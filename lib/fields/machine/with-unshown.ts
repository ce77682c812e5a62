import type { MachineJson } from '@/lib/contract/machine';
import type { FormReading } from '@/lib/fields/field-reader';
import type { MachineDraft } from './machine-rows';

/** What a form was opened with: the machine, and the draft that it became. */
export type Opened = { readonly machine: MachineJson; readonly draft: MachineDraft };

/** Groups of the draft whose text may say less than the machine did (a rounded degree), and what they hold. */
const GROUPS = [
  ['baseline', 'baseline'],
  ['intake', 'intakeOffsetC'],
  ['limits', 'limits'],
  ['trim', 'trim'],
  ['pilot', 'pilot'],
  ['needle', 'needle'],
  ['response', 'response'],
  ['fuelDensity', 'fuelDensity'],
] as const satisfies readonly (readonly [keyof MachineDraft, keyof MachineJson])[];

/** Standing by a pressure leaves the baseline what it was. */
const unconfirmed = (baseline: MachineDraft['baseline']) => ({ ...baseline, pressureConfirmed: '' });

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * The machine as read, with what nobody touched exactly as it was, and with what the form does not show: parts changed
 * since the baseline, and what the log taught about it. The latter is of that baseline alone and goes with it.
 */
export function withUnshown(
  { value, errors }: FormReading<MachineJson>,
  draft: MachineDraft,
  opened: Opened | null,
): FormReading<MachineJson> {
  if (value === null || opened === null) return { value, errors };
  const { machine, draft: before } = opened;
  const untouched = GROUPS.filter(([group]) => same(draft[group], before[group])).map(([, key]) => key);
  const kept = Object.fromEntries(
    untouched.flatMap((key) => (machine[key] === undefined ? [] : [[key, machine[key]]])),
  );
  const { hardware, baselineShift } = machine;
  const sameBaseline =
    same(unconfirmed(draft.baseline), unconfirmed(before.baseline)) &&
    same(value.carburettors, machine.carburettors);
  return {
    errors,
    value: {
      ...value,
      ...kept,
      ...(hardware === undefined ? {} : { hardware }),
      ...(baselineShift !== undefined && sameBaseline ? { baselineShift } : {}),
    },
  };
}
