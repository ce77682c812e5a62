'use client';

import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import type { PressureDoubt } from '@/lib/air/pressure-doubt';
import type { PressureAnswer } from '@/lib/contract/pressure-answer';
import { pressureAnswers } from '@/lib/words/pressure-doubts';

type PressureQuestionProps = {
  readonly doubt: PressureDoubt;
  /** What is odd, as a question. */
  readonly question: string;
  readonly onAnswer: (answer: PressureAnswer) => void;
};

/** A pressure whose kind is in doubt: one press says what it is. It keeps nothing from being saved. */
export function PressureQuestion({ doubt, question, onAnswer }: PressureQuestionProps) {
  const { keep, other } = pressureAnswers(doubt);
  const { likely } = doubt;
  return (
    <Notice
      tone="caution"
      title="Which pressure is it?"
      act={
        <>
          {likely === null || other === null ? null : (
            <Button onClick={() => onAnswer(likely)}>{other}</Button>
          )}
          <Button onClick={() => onAnswer('stands')}>{keep}</Button>
        </>
      }
    >
      <p>{question}</p>
    </Notice>
  );
}
