'use client';

import { Fold } from '@/components/draft/fold';
import { part } from '@/components/draft/part';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { Switch } from '@/components/ui/switch';
import type { IntakeChoice } from '@/lib/carb/intake-choices';
import { intakeOffsetText } from './draft-from-machine';
import type { MachineDraft } from './machine-draft';
import { intakeNow } from './now-words';
import type { MachineSectionProps } from './section-props';

type Choosable = MachineDraft['intake']['choice'];

const CHOICES: readonly { readonly value: Choosable; readonly label: string }[] = [
  { value: 'ducted', label: 'Ducted airbox' },
  { value: 'open', label: 'Open filters' },
  { value: 'hood', label: 'Under the hood' },
  { value: 'own', label: 'Measured' },
];

const isPreset = (choice: Choosable): choice is IntakeChoice => choice !== 'own';

/** How much warmer the air at the carburettor is than the weather, now and when the jets were proven. */
export function IntakeFields({ draft, form }: MachineSectionProps) {
  const intake = part(draft, 'intake');
  const baseline = part(draft, 'baseline');
  const { units } = draft.value;
  const unit = `°${units.temperature}`;
  return (
    <Fold
      title="Intake"
      now={intakeNow(draft.value)}
      open={['intake.', 'baseline.intakeOffset'].some((name) => form.hasErrors(name))}
    >
      <Choice
        {...form.field('intake.choice')}
        hint="The number is common practice; a thermometer at the carburettor is better."
        value={intake.value.choice}
        options={CHOICES}
        onChange={(choice) =>
          intake.setAll(isPreset(choice) ? { choice, offset: intakeOffsetText(choice, units) } : { choice })
        }
      />
      <NumberField
        {...form.field('intake.offset')}
        signed
        unit={unit}
        value={intake.value.offset}
        onChange={(offset) =>
          draft.change('intake.offset', (before) => ({ ...before, intake: { choice: 'own', offset } }))
        }
      />
      <Switch
        label="The intake was the same when the jets were proven"
        checked={baseline.value.sameIntake}
        onChange={(same) => baseline.set('sameIntake', same)}
      />
      {baseline.value.sameIntake ? null : (
        <NumberField
          {...form.field('baseline.intakeOffset')}
          signed
          unit={unit}
          value={baseline.value.intakeOffset}
          onChange={(text) => baseline.set('intakeOffset', text)}
        />
      )}
    </Fold>
  );
}
