'use client';

import { useState } from 'react';
import type { RosterActs } from '@/components/club/use-roster-acts';
import { Choice } from '@/components/ui/choice';
import { Dialog } from '@/components/ui/dialog';
import { Stack } from '@/components/ui/stack';
import type { ClubRecords } from '@/lib/night/club';
import type { UnitChoice } from '@/lib/units/choice';
import { LastEvent } from './last-event';
import { OpenShared } from './open-shared';
import { PasteRoster } from './paste-roster';
import { PickMachines } from './pick-machines';

type AddRacersProps = {
  readonly records: ClubRecords;
  readonly units: UnitChoice;
  readonly acts: RosterActs;
  readonly onClose: () => void;
};

const WAYS = [
  { value: 'paste', label: 'Paste a table' },
  { value: 'last', label: 'Last event' },
  { value: 'pick', label: 'Machines here' },
  { value: 'open', label: 'Links and files' },
] as const;

/** The ways onto the roster; none of them changes what is there. */
export function AddRacers({ records, units, acts, onClose }: AddRacersProps) {
  const [way, setWay] = useState<(typeof WAYS)[number]['value']>('paste');
  return (
    <Dialog title="Add racers" open onClose={onClose}>
      <Stack>
        <Choice label="From where" value={way} options={WAYS} onChange={setWay} />
        {way === 'paste' ? <PasteRoster records={records} units={units} onDone={onClose} /> : null}
        {way === 'last' ? <LastEvent records={records} onDone={onClose} /> : null}
        {way === 'pick' ? <PickMachines records={records} acts={acts} onDone={onClose} /> : null}
        {way === 'open' ? <OpenShared records={records} onDone={onClose} /> : null}
      </Stack>
    </Dialog>
  );
}
