'use client';

import { Fold } from '@/components/draft/fold';
import type { MachineFields } from './machine-fields';
import { intakeNow } from './now-words';

/** How much warmer the air at the carburettor is than the weather, now and when the jets were proven. */
export function IntakeFields({ draft, form, field }: MachineFields) {
  return (
    <Fold
      title="Intake"
      now={intakeNow(draft.value)}
      open={['intake.', 'baseline.intakeOffset'].some((name) => form.hasErrors(name))}
    >
      {field('intake.choice')}
      {field('intake.offset')}
      {field('baseline.sameIntake')}
      {field('baseline.intakeOffset')}
    </Fold>
  );
}
