'use client';

import { useId, useMemo } from 'react';
import { useKeptText } from '@/components/draft/use-kept-text';
import { fileText } from '@/components/ui/file-text';
import { Notice } from '@/components/ui/notice';
import { Stack } from '@/components/ui/stack';
import { TextArea } from '@/components/ui/text-area';
import type { ClubRecords } from '@/lib/night/club';
import { racerOfRow } from '@/lib/share/new-racers';
import { MOST_ROSTER_CHARACTERS, type RosterTable, readRosterTable } from '@/lib/share/roster-table';
import { withBib } from '@/lib/store/roster-names';
import type { UnitChoice } from '@/lib/units/choice';
import { formatElevation } from '@/lib/units/format';
import { metre } from '@/lib/units/quantity';
import { isolated } from '@/lib/words/isolated';
import { counted, listing } from '@/lib/words/listing';
import { rosterLineSentence, rosterTableSentence } from '@/lib/words/roster';
import { jetsText } from '@/lib/words/settings';
import { JoinChosen } from './join-chosen';
import styles from './roster.module.css';
import { useRepeats } from './use-repeats';

type PasteRosterProps = {
  readonly records: ClubRecords;
  readonly units: UnitChoice;
  readonly onDone: () => void;
};

/** A table out of a spreadsheet; what was understood is shown before anything is added. */
export function PasteRoster({ records, units, onDone }: PasteRosterProps) {
  const [text, setText] = useKeptText(`roster.${records.event.id}.table`);
  const fileId = useId();
  const { elevationM, timezone } = records.event.value.event;
  const read = useMemo(
    () => (text.trim() === '' ? null : readRosterTable(text, { units, elevationM })),
    [text, units, elevationM],
  );
  const racers = useMemo(() => (read?.ok ? read.value.rows.map(racerOfRow) : []), [read]);
  const { chosen, question, forget } = useRepeats(records, racers);
  return (
    <Stack>
      <HowToWrite units={units} />
      <TextArea
        label="Table"
        value={text}
        onChange={(next) => {
          setText(next);
          forget();
        }}
        spellCheck={false}
        rows={8}
        error={read?.ok === false ? rosterTableSentence(read.reason) : undefined}
      />
      <div className={styles.pick}>
        <label htmlFor={fileId}>Or the file of a roster</label>
        <input
          id={fileId}
          type="file"
          accept=".csv,.txt,text/csv,text/plain"
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            forget();
            if (file !== undefined) void fileText(file, MOST_ROSTER_CHARACTERS).then(setText);
          }}
        />
      </div>
      {read?.ok ? (
        <Understood
          table={read.value}
          elevation={formatElevation(metre(elevationM), units)}
          lineWords={(problem) => rosterLineSentence(problem, { zone: timezone, units })}
        />
      ) : null}
      {question}
      <JoinChosen eventId={records.event.id} chosen={chosen} onDone={onDone} />
    </Stack>
  );
}

function HowToWrite({ units }: Pick<PasteRosterProps, 'units'>) {
  return (
    <>
      <p className={styles.hint}>
        One line for each racer: name, mains from the first carburettor to the last, the box, the temperature
        the mains were right at; then, if you like, elevation and class. Columns may also be named in a first
        line.
      </p>
      <p className={styles.example}>
        {units.temperature === 'F'
          ? 'Ilsa Vorn; 410/400/410; 390x3 400x3 410x3 420x3; 13 F; 1320 ft; Open'
          : 'Ilsa Vorn; 410/400/410; 390x3 400x3 410x3 420x3; -10.5 C; 402 m; Open'}
      </p>
    </>
  );
}

type UnderstoodProps = {
  readonly table: RosterTable;
  readonly elevation: string;
  readonly lineWords: (problem: RosterTable['bad'][number]['problem']) => string;
};

function Understood({ table, elevation, lineWords }: UnderstoodProps) {
  const { rows, bad, ignored, elevationAssumed } = table;
  return (
    <output>
      {rows.map(({ line, bib, name, className, sharedBox, machine }) => (
        <p key={line}>
          {`${isolated(withBib(name, bib === '' ? undefined : bib))}: ${jetsText(machine.carburettors.map(({ main }) => main))}${machine.carburettors.length > 1 ? ` (${machine.carburettors.length} carburettors)` : ''}, ${counted(machine.box.length, 'size')} in the box${className === '' ? '' : `, class ${isolated(className)}`}${sharedBox === '' ? '' : `, shared box ${isolated(sharedBox)}`}.`}
        </p>
      ))}
      {elevationAssumed.length === 0 ? null : (
        <p>{`Where a line gives no elevation, the mains count as proven at the event’s ${elevation}.`}</p>
      )}
      {ignored.length === 0 ? null : <p>{`Columns not known here and left aside: ${listing(ignored)}.`}</p>}
      {bad.length === 0 ? null : (
        <Notice tone="caution" title={`${counted(bad.length, 'line')} left out.`}>
          {bad.map(({ line, problem }) => (
            <p key={line}>{`Line ${line}. ${lineWords(problem)}`}</p>
          ))}
        </Notice>
      )}
    </output>
  );
}
