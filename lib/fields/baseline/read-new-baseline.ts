import { airFromJson } from '@/lib/contract/air-from-json';
import type { MachineJson } from '@/lib/contract/machine';
import { parseWith } from '@/lib/contract/parse';
import { type FormReading, fieldReader } from '@/lib/fields/field-reader';
import { formReading } from '@/lib/fields/form-reading';
import { readMainsText } from '@/lib/fields/read-mains';
import { withValueAt } from '@/lib/fields/record-path';
import { fieldAt, readFieldRow, readFields } from '@/lib/fields/table-values';
import { toldBaselineSchema } from '@/lib/store/records';
import { NEW_BASELINE, type NewBaselineDraft, type ToldBaseline } from './baseline-rows';

/** What the draft of a baseline says, or what is wrong with which field. */
export function readNewBaseline(draft: NewBaselineDraft, machine: MachineJson): FormReading<ToldBaseline> {
  const reader = fieldReader(draft.units);
  const { carburettors, trim: circuit, intakeOffsetC } = machine;
  const read = readFields(NEW_BASELINE, draft, reader, {
    mains: () =>
      readMainsText({ name: 'mains', text: draft.mains, carburettors: carburettors.length }, reader),
    trim: () => {
      const trim = readFieldRow(NEW_BASELINE.top.rows.trim, draft.trim, 'trim', reader);
      if (circuit === undefined) return null;
      if (!Number.isInteger(trim) || Number(trim) < circuit.lowest || Number(trim) > circuit.highest)
        reader.complain('trim', `Type a position from ${circuit.lowest} to ${circuit.highest}.`);
      return trim;
    },
  });
  // The intake as it is now: a baseline of before another intake keeps its own offset.
  return formReading(reader, withValueAt(read, 'baseline.intakeOffsetC', intakeOffsetC), {
    parse: (told) => parseWith(toldBaselineSchema, told),
    check: ({ baseline }) => airFromJson(baseline.air, ['baseline', 'air']),
    fieldOf: (path) => fieldAt(NEW_BASELINE, draft, path) ?? path.join('.'),
  });
}
