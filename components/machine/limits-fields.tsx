'use client';

import { Fold } from '@/components/draft/fold';
import { NarrowColumns } from '@/components/draft/narrow-columns';
import { part } from '@/components/draft/part';
import { Choice } from '@/components/ui/choice';
import { NumberField } from '@/components/ui/number-field';
import { limitsDraft } from './draft-from-machine';
import type { LimitsDraft } from './machine-draft';
import { limitsNow } from './now-words';
import type { MachineSectionProps } from './section-props';

const CHOICES: readonly { readonly value: LimitsDraft['choice']; readonly label: string }[] = [
  { value: 'race', label: 'Race' },
  { value: 'trail', label: 'Trail' },
  { value: 'break-in', label: 'Break-in' },
  { value: 'own', label: 'My own' },
];

const HINTS: Readonly<Record<LimitsDraft['choice'], string>> = {
  race: 'You stand by the machine and want little richness.',
  trail: 'One setting for the whole day, far from the trailer.',
  'break-in': 'A fresh engine must never be lean and may well be rich.',
  own: 'Your numbers.',
};

type NumberKey = 'leanPercent' | 'richPercent' | 'risk';

/** How far from right is too far; changing a number makes the choice one's own. */
export function LimitsFields({ draft, form }: MachineSectionProps) {
  const { choice } = draft.value.limits;
  const limits = part(draft, 'limits');
  const field = (key: NumberKey, hint: string) => (
    <NumberField
      {...form.field(`limits.${key}`)}
      hint={hint}
      unit="%"
      value={draft.value.limits[key]}
      onChange={(text) =>
        draft.change(`limits.${key}`, (before) => ({
          ...before,
          limits: { ...before.limits, choice: 'own', [key]: text },
        }))
      }
    />
  );
  return (
    <Fold title="Limits" now={limitsNow(draft.value)} open={form.hasErrors('limits.')}>
      <Choice
        {...form.field('limits.choice')}
        hint={HINTS[choice]}
        value={choice}
        options={CHOICES}
        onChange={(next) => limits.setAll(next === 'own' ? { choice: next } : limitsDraft(next))}
      />
      <NarrowColumns>
        {field('leanPercent', 'Leaner than right.')}
        {field('richPercent', 'Richer than right.')}
        {field('risk', 'Accepted for a run.')}
      </NarrowColumns>
    </Fold>
  );
}
