'use client';

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

/** The form the address names; closing it shows the briefing again. */
export function ClubForms({ records, units, view, acts }: ClubFormsProps) {
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
