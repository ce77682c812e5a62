'use client';

import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Section } from '@/components/ui/section';
import { Way } from '@/components/ui/way';
import type { ReadingJson } from '@/lib/contract/event';
import { readingFromJson } from '@/lib/contract/event-from-json';
import { asSeaLevel, seaLevelMeant } from '@/lib/night/sea-level-reading';
import { readingId } from '@/lib/night/stored-readings';
import type { Plan } from '@/lib/plan/types';
import type { UnitChoice } from '@/lib/units/choice';
import { formatPercent, formatPressure } from '@/lib/units/format';
import { readFromText } from '@/lib/words/read-from';
import type { Voice } from '@/lib/words/voice';
import { type PlannedNight, readingName, readingText } from '@/lib/words/what-moved';
import { PlaceTaught } from './place-taught';
import styles from './reading.module.css';
import { ReadingDialog } from './reading-dialog';
import type { ReadingDesk } from './use-reading-desk';

type ReadingsSectionProps = {
  readonly planned: PlannedNight;
  readonly units: UnitChoice;
  readonly desk: ReadingDesk;
};

/** What was read at the track, and the way to put it right. */
export function ReadingsSection({ planned, units, desk }: ReadingsSectionProps) {
  const [edited, setEdited] = useState<{ readonly id: string; readonly value: ReadingJson } | null>(null);
  const readings = planned.night.records.event.value.readings
    .map((value, i) => ({ id: readingId(value, i), value }))
    .sort((a, b) => Date.parse(b.value.time) - Date.parse(a.value.time));
  return (
    <Section title="Readings" id="readings">
      {readings.length === 0 ? (
        <p className={styles.words}>
          None yet. What a thermometer at the track shows moves the rest of the night: most for the next
          hours, less and less after.
        </p>
      ) : (
        <ul className={styles.list}>
          {readings.map((read) => (
            <ReadingRow
              key={read.id}
              {...read}
              {...{ planned, desk }}
              onChange={() => setEdited({ id: read.id, value: read.value })}
            />
          ))}
        </ul>
      )}
      <Way href="#reading">Take a reading</Way>
      {planned.night.records.placeOffset === undefined ? null : <PlaceTaught planned={planned} />}
      {planned.night.records.event.value.demo ? null : <StationsOnRequest {...{ planned, units, desk }} />}
      {edited === null ? null : (
        <ReadingDialog
          key={edited.id}
          {...{ planned, units, desk }}
          reading={edited}
          // A save may end after another form was opened: that one stays.
          onClose={() => setEdited((open) => (open === edited ? null : open))}
        />
      )}
    </Section>
  );
}

type ReadingRowProps = Omit<ReadingsSectionProps, 'units'> & {
  readonly id: string;
  readonly value: ReadingJson;
  readonly onChange: () => void;
};

function ReadingRow({ id, value, planned, desk, onChange }: ReadingRowProps) {
  const name = readingName(readingFromJson(value, 0), planned);
  return (
    <li className={styles.row}>
      <ReadingWords id={id} value={value} planned={planned} />
      <div className={styles.acts}>
        {unheard(planned.plan, id) === 'questioned' ? (
          <Button onClick={() => void desk.keep({ ...value, id, confirmed: true })}>
            It is right: use it
          </Button>
        ) : null}
        {seaLevelMeant(planned, id) ? (
          <Button onClick={() => void desk.keep({ ...asSeaLevel(value, planned), id })}>
            It is a sea-level number
          </Button>
        ) : null}
        {value.from === undefined ? (
          <Button kind="quiet" aria-label={`Change ${name}`} onClick={onChange}>
            Change
          </Button>
        ) : null}
        <Button kind="quiet" aria-label={`Remove ${name}`} onClick={() => void desk.remove(id, value)}>
          Remove
        </Button>
      </div>
    </li>
  );
}

const NearbyStations = dynamic(() => import('./nearby-stations').then((module) => module.NearbyStations), {
  ssr: false,
  loading: () => <p>Opening…</p>,
});

/** Few nights need a station: what asks one is loaded by whoever wants it. */
function StationsOnRequest(props: ReadingsSectionProps) {
  const [wanted, setWanted] = useState(false);
  if (wanted) return <NearbyStations {...props} />;
  return (
    <Button kind="quiet" className={styles.station} onClick={() => setWanted(true)}>
      No thermometer? Ask a weather station
    </Button>
  );
}

type ReadingWordsProps = {
  readonly id: string;
  readonly value: ReadingJson;
  readonly planned: PlannedNight;
};

function ReadingWords({ id, value, planned }: ReadingWordsProps) {
  const reading = readingFromJson({ ...value, id }, 0);
  const { voice } = planned;
  const parts = [
    `${readingText(reading, planned)}.`,
    alsoRead(reading, voice),
    readFromText(reading, voice.units),
  ];
  const use = unheard(planned.plan, id);
  return (
    <p className={styles.words}>
      {parts.filter((part) => part !== '').join(' ')}
      {use === null ? null : <strong> {UNHEARD[use]}</strong>}
    </p>
  );
}

type Read = ReturnType<typeof readingFromJson>;

function alsoRead({ stationPressure, relativeHumidity }: Read, { units }: Voice): string {
  const parts = [
    stationPressure === null ? '' : `station pressure ${formatPressure(stationPressure, units)}`,
    relativeHumidity === null ? '' : `humidity ${formatPercent(relativeHumidity)}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? '' : `Also ${parts.join(', ')}.`;
}

type Unheard = 'questioned' | 'outside';

const UNHEARD: Readonly<Record<Unheard, string>> = {
  questioned: 'Not used: it is too far from the hours to believe unasked.',
  outside: 'Not used: the plan has no hours at that time.',
};

/** Why the plan did not listen to a reading; null where it did. */
function unheard({ warnings }: Plan, id: string): Unheard | null {
  const about = warnings.find((warning) => 'readingId' in warning && warning.readingId === id);
  if (about === undefined) return null;
  return about.code === 'reading-outside-hours' ? 'outside' : 'questioned';
}
