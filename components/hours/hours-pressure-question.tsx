'use client';

import { PressureQuestion } from '@/components/air/pressure-question';
import { hoursPressureDoubt } from '@/lib/contract/pressure-doubts';
import { answeredHours } from '@/lib/fields/hours/hours-pressure-key';
import { pressureQuestion } from '@/lib/words/pressure-doubts';
import type { HoursSectionProps } from './section-props';

type HoursPressureQuestionProps = Pick<HoursSectionProps, 'draft' | 'reading'>;

/** The question about the pressures of the typed hours; nothing where there is none, or it was answered. */
export function HoursPressureQuestion({ draft, reading }: HoursPressureQuestionProps) {
  const doubt = reading === null ? null : hoursPressureDoubt(reading.typed, reading.elevationM);
  if (doubt === null) return null;
  return (
    <PressureQuestion
      doubt={doubt}
      question={pressureQuestion(doubt, draft.value.units)}
      onAnswer={(answer) => draft.change(null, (before) => answeredHours(before, answer))}
    />
  );
}
