'use client';

import { Fold } from '@/components/draft/fold';
import { NarrowColumns } from '@/components/draft/narrow-columns';
import type { MachineFields } from './machine-fields';
import { limitsNow } from './now-words';

/** How far from right is too far; changing a number makes the choice one's own. */
export function LimitsFields({ draft, form, field }: MachineFields) {
  return (
    <Fold title="Limits" now={limitsNow(draft.value)} open={form.hasErrors('limits.')}>
      {field('limits.choice')}
      <NarrowColumns>
        {field('limits.leanPercent')}
        {field('limits.richPercent')}
        {field('limits.risk')}
      </NarrowColumns>
    </Fold>
  );
}
