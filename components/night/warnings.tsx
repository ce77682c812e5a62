import { Notice } from '@/components/ui/notice';
import { Stack } from '@/components/ui/stack';
import type { Plan } from '@/lib/plan/types';
import type { Voice } from '@/lib/words/voice';
import { warningSentences } from '@/lib/words/warnings';

type WarningsProps = { readonly plan: Plan; readonly voice: Voice };

/** What must be known beside the plan. What is loud stands at the top of the page already. */
export function Warnings({ plan, voice }: WarningsProps) {
  const warnings = warningSentences(plan, voice).filter(({ code }) => code !== 'no-jet-rich-enough');
  if (warnings.length === 0) return null;
  return (
    <Stack>
      {warnings.map(({ code, message }) => (
        <Notice key={`${code} ${message}`} tone="caution">
          <p>{message}</p>
        </Notice>
      ))}
    </Stack>
  );
}
