'use client';

import { PressureQuestion } from '@/components/air/pressure-question';
import { useWrite } from '@/components/store/use-write';
import type { PressureAnswer } from '@/lib/contract/pressure-answer';
import type { NightRecords } from '@/lib/night/night';
import type { PlanWarning } from '@/lib/plan/types';
import { withBaselinePressure } from '@/lib/store/baseline-pressure';
import { withHoursPressure } from '@/lib/store/pressure-answers';
import { pressureWarningQuestion } from '@/lib/words/pressure-doubts';
import type { Voice } from '@/lib/words/voice';

export type PressureQuestionWarning = Extract<
  PlanWarning,
  { code: 'baseline-pressure-in-doubt' | 'hours-pressure-in-doubt' }
>;

type PressureQuestionsProps = {
  readonly questions: readonly PressureQuestionWarning[];
  readonly records: Pick<NightRecords, 'event' | 'machine'>;
  readonly voice: Voice;
};

const ANSWERED: Readonly<Record<PressureAnswer, string>> = {
  stands: 'The pressure stands as typed.',
  station: 'It is taken as station pressure now.',
  'sea-level': 'It is taken as a sea-level number now.',
};

/** Pressures of the baseline and the typed hours whose kind is in doubt, each answered with one press and kept. */
export function PressureQuestions({ questions, records, voice }: PressureQuestionsProps) {
  const write = useWrite();
  const { event, machine } = records;
  return questions.map((warning) => {
    const question = pressureWarningQuestion(warning, voice.units);
    const isHours = warning.code === 'hours-pressure-in-doubt';
    const answer = (said: PressureAnswer) =>
      isHours
        ? write.change(
            { table: 'events', id: event.id },
            (current) => withHoursPressure(current, said),
            ANSWERED[said],
          )
        : write.change(
            { table: 'machines', id: machine.id },
            (current) => withBaselinePressure(current, said),
            ANSWERED[said],
          );
    return (
      <PressureQuestion
        key={warning.code}
        doubt={warning.doubt}
        question={question}
        onAnswer={(said) => void answer(said)}
      />
    );
  });
}
