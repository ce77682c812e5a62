'use client';

import { useMemo, useState } from 'react';
import type { ClubRecords } from '@/components/club/club';
import { clubNames } from '@/components/club/names';
import { racerOfRow } from '@/components/club/new-racers';
import { useAddRacers } from '@/components/club/use-add-racers';
import { useKeptText } from '@/components/draft/use-kept-text';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { Acts, Stack } from '@/components/ui/stack';
import { TextArea } from '@/components/ui/text-area';
import { type RosterTable, readRosterTable } from '@/lib/share/roster-table';
import type { UnitChoice } from '@/lib/units/choice';
import { formatElevation } from '@/lib/units/format';
import { metre } from '@/lib/units/quantity';
import { counted, listing } from '@/lib/words/listing';
import { rosterLineSentence, rosterTableSentence } from '@/lib/words/roster';
import { jetsText } from '@/lib/words/settings';
import styles from './roster.module.css';

type PasteRosterProps = {
  readonly records: ClubRecords;
  readonly units: UnitChoice;
  readonly onDone: () => void;
};

/** A table out of a spreadsheet; what was understood is shown before anything is added. */
export function PasteRoster({ records, units, onDone }: PasteRosterProps) {
  const [text, setText] = useKeptText(`roster.${records.event.id}.table`);
  const [refusal, setRefusal] = useState<string | null>(null);
  const add = useAddRacers(records.event.id);
  const { elevationM, timezone } = records.event.value.event;
  const read = useMemo(
    () => (text.trim() === '' ? null : readRosterTable(text, { units, elevationM })),
    [text, units, elevationM],
  );
  const known = useMemo(() => {
    const names = clubNames(records);
    return new Set(records.machines.map(({ id }) => names.racer(id).toLowerCase()));
  }, [records]);
  const fresh = read?.ok ? read.value.rows.filter(({ name }) => !known.has(name.toLowerCase())) : [];
  async function addAll() {
    const refused = await add(fresh.map(racerOfRow));
    setRefusal(refused ?? null);
    // Lines that could not be used stay to be put right; those that were added are known by their names.
    if (refused !== undefined || (read?.ok === true && read.value.bad.length > 0)) return;
    setText('');
    onDone();
  }
  return (
    <Stack>
      <HowToWrite units={units} />
      <TextArea
        label="Table"
        value={text}
        onChange={setText}
        spellCheck={false}
        rows={8}
        error={read?.ok === false ? rosterTableSentence(read.reason) : undefined}
      />
      {read?.ok ? (
        <Understood
          table={read.value}
          fresh={fresh.length}
          elevation={formatElevation(metre(elevationM), units)}
          lineWords={(problem) => rosterLineSentence(problem, { zone: timezone, units })}
        />
      ) : null}
      {refusal === null ? null : (
        <Notice tone="danger" title="Not added.">
          <p>{refusal}</p>
        </Notice>
      )}
      <Acts>
        <Button kind="primary" disabled={fresh.length === 0} onClick={() => void addAll()}>
          {fresh.length === 0 ? 'Add' : `Add ${counted(fresh.length, 'racer')}`}
        </Button>
      </Acts>
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
  /** How many are not on the roster yet. */
  readonly fresh: number;
  readonly elevation: string;
  readonly lineWords: (problem: RosterTable['bad'][number]['problem']) => string;
};

function Understood({ table, fresh, elevation, lineWords }: UnderstoodProps) {
  const { rows, bad, ignored, elevationAssumed } = table;
  return (
    <output>
      {rows.map(({ line, name, className, machine }) => (
        <p key={line}>
          {`${name}: ${jetsText(machine.carburettors.map(({ main }) => main))}${machine.carburettors.length > 1 ? ` (${machine.carburettors.length} carburettors)` : ''}, ${counted(machine.box.length, 'size')} in the box${className === '' ? '' : `, class ${className}`}.`}
        </p>
      ))}
      {rows.length > fresh ? (
        <p>{`${counted(rows.length - fresh, 'name')} on the roster already: left out.`}</p>
      ) : null}
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
