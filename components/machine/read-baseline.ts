import { readAir, typedAir } from '@/components/air/read-air';
import { type FieldReader, ifTyped } from '@/components/draft/field-reader';
import { withoutGaps } from '@/components/draft/without-gaps';
import type { AirStateJson } from '@/lib/contract/air';
import type { UnitChoice } from '@/lib/units/choice';
import type { BaselineDraft } from './machine-draft';

/** The baseline's JSON as far as it can be read. */
export function readBaseline(draft: BaselineDraft, reader: FieldReader): unknown {
  return withoutGaps({
    air: readAir(draft, reader, 'baseline'),
    judged: draft.judged,
    provenOn: ifTyped(draft.provenOn, () => draft.provenOn.trim()),
    note: ifTyped(draft.note, () => draft.note),
    intakeOffsetC: draft.sameIntake
      ? undefined
      : reader.temperatureStepC({ name: 'baseline.intakeOffset', text: draft.intakeOffset, example: '5' }),
  });
}

/** The air as typed so far, for showing what it comes to; null until it can be read. */
export function baselineAir(draft: BaselineDraft, units: UnitChoice): AirStateJson | null {
  return typedAir(draft, units);
}
