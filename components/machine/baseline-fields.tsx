'use client';

import { AirReadout } from '@/components/air/air-readout';
import { TypedPressureQuestion } from '@/components/air/typed-pressure-question';
import { Fold } from '@/components/draft/fold';
import { Section } from '@/components/ui/section';
import { Columns } from '@/components/ui/stack';
import { typedAir } from '@/lib/fields/air/typed-air';
import type { MachineFields } from './machine-fields';
import { baselineMoreNow } from './now-words';

/** The air the jets were proven in, and how sure the racer is. */
export function BaselineFields({ draft, field }: MachineFields) {
  const { units, baseline } = draft.value;
  return (
    <Section title="Baseline: the air they were good in">
      <Columns>
        {field('baseline.temperature')}
        {field('baseline.elevation')}
      </Columns>
      {field('baseline.pressureKind')}
      {field('baseline.pressure')}
      <TypedPressureQuestion
        air={baseline}
        units={units}
        onAnswered={(values) =>
          draft.change(null, (before) => ({ ...before, baseline: { ...before.baseline, ...values } }))
        }
      />
      <AirReadout air={typedAir(baseline, units)} units={units} />
      {field('baseline.judged')}
    </Section>
  );
}

/** What else may be known of the baseline. */
export function BaselineMoreFields({ draft, form, field }: MachineFields) {
  const bad = ['baseline.humidity', 'baseline.provenOn', 'baseline.note'].some((name) =>
    form.hasErrors(name),
  );
  return (
    <Fold
      title="More about the baseline"
      now={baselineMoreNow(draft.value)}
      open={draft.value.baseline.humidityKind !== 'unknown' || bad}
    >
      <Columns>
        {field('baseline.humidityKind')}
        {field('baseline.humidity')}
      </Columns>
      <Columns>
        {field('baseline.provenOn')}
        {field('baseline.note')}
      </Columns>
    </Fold>
  );
}
