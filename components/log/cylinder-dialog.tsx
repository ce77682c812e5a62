'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Choice } from '@/components/ui/choice';
import { Dialog } from '@/components/ui/dialog';
import { Select } from '@/components/ui/select';
import { type CylinderVerdicts, leanestVerdict, type Verdict } from '@/lib/carb/verdicts';
import { VERDICT_CHOICES } from '@/lib/words/verdict-choices';

export const CYLINDER_VERDICTS: readonly { readonly value: Verdict | 'none'; readonly label: string }[] = [
  ...VERDICT_CHOICES,
  { value: 'none', label: 'Not looked at' },
];

const SIZES = [
  { value: '', label: 'Not said: about one' },
  ...[0.5, 1, 1.5, 2, 3].map((sizes) => ({ value: String(sizes), label: String(sizes) })),
];

type CylinderDialogProps = {
  /** The run. */
  readonly title: string;
  readonly cylinders: number;
  readonly onSay: (verdicts: CylinderVerdicts, sizes: number | null) => void;
  readonly onClose: () => void;
};

/** What the plugs said in each cylinder. */
export function CylinderDialog({ title, cylinders, onSay, onClose }: CylinderDialogProps) {
  const [verdicts, setVerdicts] = useState<CylinderVerdicts>(() =>
    Array.from({ length: cylinders }, () => null),
  );
  const [sizes, setSizes] = useState('');
  const leanest = leanestVerdict(verdicts);
  const put = (place: number, verdict: Verdict | 'none') =>
    setVerdicts(verdicts.map((each, i) => (i !== place ? each : verdict === 'none' ? null : verdict)));
  return (
    <Dialog
      title={`${title}, cylinder by cylinder`}
      open
      onClose={onClose}
      footer={
        <Button
          kind="primary"
          disabled={leanest === null}
          onClick={() => onSay(verdicts, sizes === '' ? null : Number(sizes))}
        >
          Put it into the log
        </Button>
      }
    >
      {verdicts.map((verdict, place) => (
        <Choice
          // biome-ignore lint/suspicious/noArrayIndexKey: cylinders are told apart by their place
          key={place}
          label={`Cylinder ${place + 1}`}
          value={verdict ?? 'none'}
          options={CYLINDER_VERDICTS}
          onChange={(next) => put(place, next)}
        />
      ))}
      {leanest === 'lean' || leanest === 'rich' ? (
        <Select label={`By how many sizes ${leanest}`} value={sizes} options={SIZES} onChange={setSizes} />
      ) : null}
    </Dialog>
  );
}
