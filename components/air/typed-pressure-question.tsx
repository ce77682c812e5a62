'use client';

import { airPressureDoubt } from '@/lib/contract/pressure-doubts';
import type { AirDraft } from '@/lib/fields/air/air-rows';
import { answeredPressure } from '@/lib/fields/air/pressure-key';
import { typedAir } from '@/lib/fields/air/typed-air';
import type { UnitChoice } from '@/lib/units/choice';
import { pressureQuestion } from '@/lib/words/pressure-doubts';
import { PressureQuestion } from './pressure-question';

type TypedPressureQuestionProps = {
  readonly air: AirDraft;
  readonly units: UnitChoice;
  readonly onAnswered: (values: Pick<AirDraft, 'pressureKind' | 'pressureConfirmed'>) => void;
};

/** The question about the pressure of a typed air; nothing where there is none, or it was answered. */
export function TypedPressureQuestion({ air, units, onAnswered }: TypedPressureQuestionProps) {
  const typed = typedAir(air, units);
  const doubt = typed === null ? null : airPressureDoubt(typed);
  if (doubt === null) return null;
  return (
    <PressureQuestion
      doubt={doubt}
      question={pressureQuestion(doubt, units)}
      onAnswer={(answer) => onAnswered(answeredPressure(air, answer))}
    />
  );
}
