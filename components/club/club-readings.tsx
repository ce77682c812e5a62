'use client';

import { NewReading } from '@/components/reading/reading-dialog';
import { ReadingsSection } from '@/components/reading/readings-section';
import { useReadingDesk } from '@/components/reading/use-reading-desk';
import { useClockZone } from '@/components/store/use-clock-zone';
import type { PlannedRacer } from '@/lib/club/racer';
import { type ClubRecords, recordsOf } from '@/lib/night/club';
import { type Night, nightFrom } from '@/lib/night/night';
import type { Instant } from '@/lib/time/instant';
import type { UnitChoice } from '@/lib/units/choice';
import type { PlannedNight } from '@/lib/words/what-moved';

type ClubReadingsProps = {
  readonly records: ClubRecords;
  /** The hours are the same for all, so any of them will do. */
  readonly planned: PlannedRacer | undefined;
  readonly now: Instant;
  readonly units: UnitChoice;
};

/** What was read at the track counts for everybody. */
export function ClubReadings({ records, planned, now, units }: ClubReadingsProps) {
  const night = planned === undefined ? null : nightOfOne(records, planned.racer.id);
  const zone = useClockZone(records.event.value.event.timezone);
  if (planned === undefined || night === null) return null;
  const { temperature, pressure, elevation } = units;
  const voice = { zone, units: { temperature, pressure, elevation }, now };
  return <Readings planned={{ night, plan: planned.plan, now, voice }} />;
}

function Readings({ planned }: { readonly planned: PlannedNight }) {
  const desk = useReadingDesk(planned, { tellsMoves: false });
  const parts = { planned, units: planned.voice.units, desk };
  return (
    <>
      <ReadingsSection {...parts} />
      <NewReading {...parts} />
    </>
  );
}

function nightOfOne(records: ClubRecords, racerId: string): Night | null {
  const own = recordsOf(records, racerId);
  if (own === null) return null;
  const night = nightFrom(own);
  return night.ok ? night.value : null;
}
