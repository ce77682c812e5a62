'use client';

import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Dialog } from '@/components/ui/dialog';
import { turnBack, useHash } from '@/components/ui/use-hash';
import type { ReadingJson } from '@/lib/contract/event';
import { newId } from '@/lib/store/new-id';
import type { UnitChoice } from '@/lib/units/choice';
import type { PlannedNight } from '@/lib/words/what-moved';
import type { ReadingDesk } from './use-reading-desk';

const ReadingForm = dynamic(() => import('./reading-form').then((module) => module.ReadingForm), {
  ssr: false,
  loading: () => <p>Opening the form…</p>,
});

type ReadingDialogProps = {
  readonly planned: PlannedNight;
  readonly units: UnitChoice;
  readonly desk: ReadingDesk;
  readonly reading: { readonly id: string; readonly value: ReadingJson } | null;
  readonly onClose: () => void;
};

/** The form in front of the page, for a new reading or a known one. */
export function ReadingDialog({ planned, units, desk, reading, onClose }: ReadingDialogProps) {
  const [fresh] = useState(newId);
  return (
    <Dialog title="Reading" open onClose={onClose}>
      <ReadingForm
        planned={planned}
        units={units}
        id={reading?.id ?? fresh}
        initial={reading?.value ?? null}
        onSave={async (value) => {
          const refusal = await desk.keep(value);
          if (refusal === undefined) onClose();
          return refusal;
        }}
        onCancel={onClose}
      />
    </Dialog>
  );
}

type NewReadingProps = Omit<ReadingDialogProps, 'reading' | 'onClose'>;

/** A new reading, where the address asks for one; closing leads back to the view it was asked from. */
export function NewReading(props: NewReadingProps) {
  const hash = useHash();
  if (hash !== 'reading' && hash !== TRACK_READING) return null;
  const close = () => turnBack(hash, hash === TRACK_READING ? 'track' : 'night');
  return <ReadingDialog {...props} reading={null} onClose={close} />;
}

/** The form over the at-the-track view. */
export const TRACK_READING = 'track-reading';
