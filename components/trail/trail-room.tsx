'use client';

import { useState } from 'react';
import { deviceZone } from '@/components/event/zones';
import { useClockZone } from '@/components/store/use-clock-zone';
import { usePreferences } from '@/components/store/use-preferences';
import { Notice } from '@/components/ui/notice';
import { instant } from '@/lib/time/instant';
import { localDate } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { problemSentences } from '@/lib/words/night-problems';
import { CardSection } from './card-section';
import { DialSection } from './dial-section';
import { MachineSection } from './machine-section';
import { RideSection } from './ride-section';
import { SeasonsSection } from './seasons-section';
import styles from './trail.module.css';
import { TrailCautions } from './trail-cautions';
import { TypedActs } from './typed-acts';
import { useTrailDraft } from './use-trail-draft';
import { useTrailMachine } from './use-trail-machine';

/** Waits for the units, since every field of the page is typed in them. */
export function TrailRoom() {
  const { preferences, known } = usePreferences();
  if (!known) return <p>Opening the trail…</p>;
  const { temperature, pressure, elevation } = preferences;
  return <TrailDesk units={{ temperature, pressure, elevation }} />;
}

function TrailDesk({ units }: { readonly units: UnitChoice }) {
  const [start] = useState(() => {
    const timezone = deviceZone();
    return { units, timezone, date: localDate(instant(Date.now()), timezone) };
  });
  const draft = useTrailDraft(start, units);
  const zone = useClockZone(draft.value.ride.timezone);
  const machine = useTrailMachine(draft.value.machineId);
  if (machine === null) return <p>Opening your machines…</p>;
  const head = <MachineSection draft={draft} machine={machine} />;
  if (!machine.machine.ok) {
    const voice = { zone, units, runNames: [] };
    return (
      <>
        {head}
        <Notice tone="caution" title="This machine cannot be used yet.">
          {problemSentences({ code: 'machine', problems: machine.machine.reason }, voice).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          <p>
            Fix it on the <a href="/machines">machines</a> page.
          </p>
        </Notice>
      </>
    );
  }
  const parts = { draft, machine: machine.machine.value, invented: machine.invented };
  return (
    <>
      {head}
      <div className={styles.desk}>
        <div className={styles.side}>
          <SeasonsSection {...parts} />
          <DialSection {...parts} />
        </div>
        <div className={styles.side}>
          <RideSection {...parts} />
          <CardSection {...parts} name={machine.name} />
        </div>
      </div>
      <TypedActs draft={draft} />
      <TrailCautions />
    </>
  );
}
