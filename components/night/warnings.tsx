'use client';

import { Notice } from '@/components/ui/notice';
import { Stack } from '@/components/ui/stack';
import type { NightRecords } from '@/lib/night/night';
import type { Plan, PlanWarning } from '@/lib/plan/types';
import type { Voice } from '@/lib/words/voice';
import { warningSentences } from '@/lib/words/warnings';
import { PressureQuestions, type PressureQuestionWarning } from './pressure-questions';

/** The warnings that are answered beside their buttons. */
const PRESSURE_QUESTION_CODES = ['baseline-pressure-in-doubt', 'hours-pressure-in-doubt'] as const;

function isPressureQuestion(warning: PlanWarning): warning is PressureQuestionWarning {
  return PRESSURE_QUESTION_CODES.some((code) => code === warning.code);
}

type WarningsProps = {
  readonly plan: Plan;
  readonly records: Pick<NightRecords, 'event' | 'machine'>;
  readonly voice: Voice;
};

/** Said elsewhere: at the top of the page, or beside the buttons that answer. */
const TOLD_ELSEWHERE: ReadonlySet<string> = new Set(['no-jet-rich-enough', ...PRESSURE_QUESTION_CODES]);

/** What must be known beside the plan. What is loud stands at the top of the page already. */
export function Warnings({ plan, records, voice }: WarningsProps) {
  const warnings = warningSentences(plan, voice).filter(({ code }) => !TOLD_ELSEWHERE.has(code));
  const questions = plan.warnings.filter(isPressureQuestion);
  if (warnings.length + questions.length === 0) return null;
  return (
    <Stack>
      {questions.length === 0 ? null : (
        <PressureQuestions questions={questions} records={records} voice={voice} />
      )}
      {warnings.map(({ code, message }) => (
        <Notice key={`${code} ${message}`} tone="caution">
          <p>{message}</p>
        </Notice>
      ))}
    </Stack>
  );
}
