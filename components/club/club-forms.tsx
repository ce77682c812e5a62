'use client';

import { useState } from 'react';
import { EditEvent, EditHours } from '@/components/night/setup/edit-dialogs';
import { turnBack } from '@/components/ui/use-hash';
import type { ClubRecords } from '@/lib/night/club';
import type { UnitChoice } from '@/lib/units/choice';
import { NewClubNight } from './new-club-night';
import { AddRacers } from './roster/add-racers';
import { BoxDialog } from './roster/box-dialog';
import { ClassDialog } from './roster/class-dialog';
import { RacerDialog } from './roster/racer-dialog';
import type { RosterActs } from './use-roster-acts';

type ClubFormsProps = {
  readonly records: ClubRecords;
  readonly units: UnitChoice;
  readonly view: string;
  readonly acts: RosterActs;
};

const CLASS = 'class-';
const RACER = 'racer-';
const BOX = 'box-';

/**
 * The form the address names, once the chosen event has been read: nobody is to type into the one before. A form that
 * stands stays, whatever is chosen elsewhere.
 */
export function ClubForms({ isChosen, ...form }: ClubFormsProps & { readonly isChosen: boolean }) {
  const { view } = form;
  const [stands, setStands] = useState('');
  if (view !== stands && (isChosen || view === 'new')) setStands(view);
  return view === stands ? <ClubForm {...form} /> : null;
}

/** Closing it shows the briefing again. */
function ClubForm({ records, units, view, acts }: ClubFormsProps) {
  const { event } = records;
  const close = () => turnBack(view, 'briefing');
  /** A night that has nobody yet asks for racers once its hours are there. */
  const closeHours = () => turnBack(view, event.value.machineIds.length === 0 ? 'racers' : 'briefing');
  if (view === 'new') return <NewClubNight units={units} />;
  if (view === 'event') return <EditEvent stored={event} units={units} onClose={close} />;
  if (view === 'hours') return <EditHours stored={event} units={units} onClose={closeHours} />;
  if (view === 'racers') return <AddRacers records={records} units={units} acts={acts} onClose={close} />;
  if (view.startsWith(RACER))
    return (
      <RacerDialog key={view} id={view.slice(RACER.length)} records={records} acts={acts} onClose={close} />
    );
  if (view.startsWith(BOX))
    return <BoxDialog key={view} boxId={view.slice(BOX.length)} records={records} onClose={close} />;
  if (view.startsWith(CLASS))
    return (
      <ClassDialog
        key={view}
        classId={view.slice(CLASS.length)}
        records={records}
        units={units}
        acts={acts}
        onClose={close}
      />
    );
  return null;
}
