'use client';

import { useId, useMemo, useState } from 'react';
import { useKeptText } from '@/components/draft/use-kept-text';
import { useClockZone } from '@/components/store/use-clock-zone';
import { Notice } from '@/components/ui/notice';
import { Stack } from '@/components/ui/stack';
import { TextArea } from '@/components/ui/text-area';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { ClubRecords } from '@/lib/night/club';
import { type OpenedNight, readSharedLinks } from '@/lib/share/shared-links';
import type { SharedNight } from '@/lib/share/shared-night';
import { HOUR_MS } from '@/lib/time/instant';
import { linkProblemSentence } from '@/lib/words/link-problems';
import { counted, listing } from '@/lib/words/listing';
import { jetsText } from '@/lib/words/settings';
import { dateClockText } from '@/lib/words/times';
import { JoinChosen } from './join-chosen';
import { KnownRacers } from './known-racers';
import { readSharedFiles } from './read-shared';
import styles from './roster.module.css';
import { useKnownRacers } from './use-known-racers';
import { useRepeats } from './use-repeats';

type OpenSharedProps = { readonly records: ClubRecords; readonly onDone: () => void };

/** Nights that racers shared: their machines come in beside yours, their weather does not. */
export function OpenShared({ records, onDone }: OpenSharedProps) {
  const [text, setText] = useKeptText(`roster.${records.event.id}.links`);
  const [files, setFiles] = useState<readonly OpenedNight[]>([]);
  const fileId = useId();
  const opened = useMemo(() => [...readSharedLinks(text), ...files], [text, files]);
  const { known, racers, isSame } = useKnownRacers(records, opened);
  const { chosen, question, forget } = useRepeats(records, racers);
  return (
    <Stack>
      <p className={styles.hint}>
        Paste the links your racers sent, all at once if you like, or choose their files. A link of a racer
        who is here brings what is new: what is in, runs made, readings, the box. The place and forecast of
        this event count for everybody, and nothing of yours is lost.
      </p>
      <TextArea
        label="Links"
        value={text}
        onChange={(next) => {
          setText(next);
          forget();
        }}
        spellCheck={false}
        rows={4}
      />
      <div className={styles.pick}>
        <label htmlFor={fileId}>Files</label>
        <input
          id={fileId}
          type="file"
          multiple
          accept=".json,application/json"
          onChange={(event) => {
            forget();
            void readSharedFiles([...(event.target.files ?? [])]).then(setFiles);
          }}
        />
      </div>
      <output>
        {text.trim() !== '' && opened.length === 0 ? <p>There is no link in this text.</p> : null}
        {opened.map(({ label, read }) =>
          read.ok ? (
            <SharedWords key={label} label={label} night={read.value} records={records} />
          ) : (
            <p key={label}>{`${label}: ${linkProblemSentence(read.reason)}`}</p>
          ),
        )}
      </output>
      <KnownRacers known={known} isSame={isSame} records={records} />
      {question}
      <JoinChosen eventId={records.event.id} chosen={chosen} onDone={onDone} />
    </Stack>
  );
}

type SharedWordsProps = OpenedWords & { readonly records: ClubRecords };
type OpenedWords = { readonly label: string; readonly night: SharedNight };

/** Runs further off than this are those of another night. */
const ANOTHER_NIGHT_MS = 24 * HOUR_MS;

function SharedWords({ label, night, records }: SharedWordsProps) {
  const { event } = records.event.value;
  const zone = useClockZone(event.timezone);
  const machines = night.machines.map(
    ({ machine }) => `${machine.name} (${jetsText(machine.carburettors.map(({ main }) => main))})`,
  );
  const [here, there] = [event.runs[0], night.event.runs[0]].map((run) =>
    run === undefined ? null : instantFromJson(run.start),
  );
  const another = here != null && there != null && Math.abs(here - there) > ANOTHER_NIGHT_MS;
  return (
    <>
      <p>{`${label}: ${listing(machines)}, ${counted(night.event.runs.length, 'run')} of ${night.event.name}.`}</p>
      {another && there != null ? (
        <Notice tone="caution" title="Another night.">
          <p>{`Its runs start ${dateClockText(there, zone)}. After adding, choose “runs with everybody” for it in the roster.`}</p>
        </Notice>
      ) : null}
    </>
  );
}
