'use client';

import { useState } from 'react';
import { useWriteAll } from '@/components/store/use-write-all';
import { Button } from '@/components/ui/button';
import { FileButton } from '@/components/ui/file-button';
import { fileText } from '@/components/ui/file-text';
import { Notice } from '@/components/ui/notice';
import { saveFile } from '@/components/ui/save-file';
import { ButtonRow } from '@/components/ui/stack';
import type { LogCsvProblem } from '@/lib/contract/log-csv-problem';
import type { Result } from '@/lib/result/result';
import { previewLog, withLogEntries } from '@/lib/share/import-log';
import { writeLogCsv } from '@/lib/share/log-csv';
import { MOST_CSV_CHARACTERS, type ReadLog, readLogCsv } from '@/lib/share/read-log-csv';
import { newId } from '@/lib/store/new-id';
import type { LogRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { counted, listing } from '@/lib/words/listing';
import { csvProblemSentence } from '@/lib/words/log-csv-problems';

type LogFileProps = {
  readonly entries: readonly Stored<LogRecord>[];
  readonly log: readonly Stored<LogRecord>[];
  readonly names: ReadonlyMap<string, string>;
  readonly units: UnitChoice;
  readonly today: string;
};

type Reading = { readonly file: string; readonly read: Result<ReadLog, readonly LogCsvProblem[]> };

/** The log as a table for a spreadsheet, out and in. */
export function LogFile({ entries, log, names, units, today }: LogFileProps) {
  const [reading, setReading] = useState<Reading | null>(null);
  const save = () =>
    saveFile({
      name: `run-log-${today}.csv`,
      type: 'text/csv;charset=utf-8',
      text: writeLogCsv(
        entries.map(({ id, value }) => ({ id, value, machine: names.get(value.machineId) ?? '' })),
      ),
    });
  const open = async (file: File) => {
    const machines = [...names].map(([id, name]) => ({ id, name }));
    setReading({ file: file.name, read: readLogCsv(await fileText(file, MOST_CSV_CHARACTERS), machines) });
  };
  return (
    <>
      <ButtonRow>
        <Button onClick={save} disabled={entries.length === 0}>
          Save as CSV ({entries.length})
        </Button>
        <FileButton label="Take in a CSV" accept=".csv,text/csv" onFile={(file) => void open(file)} />
      </ButtonRow>
      {reading === null ? null : (
        <ReadFile
          {...reading}
          {...{ log, units }}
          // What takes in one file may end after the next was opened: that one stays.
          onClose={() => setReading((open) => (open === reading ? null : open))}
        />
      )}
    </>
  );
}

type ReadFileProps = Reading & {
  readonly log: readonly Stored<LogRecord>[];
  readonly units: UnitChoice;
  readonly onClose: () => void;
};

function ReadFile({ file, read, log, units, onClose }: ReadFileProps) {
  const takeIn = useTakeIn(onClose);
  if (!read.ok) {
    return (
      <Notice
        tone="danger"
        title={`${file} was not taken in; nothing was changed.`}
        act={<Button onClick={onClose}>Close</Button>}
      >
        <ul>
          {read.reason.map((problem) => {
            const sentence = csvProblemSentence(problem, units);
            return <li key={sentence}>{sentence}</li>;
          })}
        </ul>
      </Notice>
    );
  }
  const { added, same, different } = previewLog(read.value.entries, log);
  const { ignored } = read.value;
  return (
    <Notice
      title={`${file}: ${counted(added.length, 'new run')}.`}
      act={
        <>
          <Button kind="primary" disabled={added.length === 0} onClick={() => takeIn(read.value)}>
            Take in {counted(added.length, 'run')}
          </Button>
          <Button onClick={onClose}>Leave it</Button>
        </>
      }
    >
      {same > 0 ? <p>{counted(same, 'run')} are here already.</p> : null}
      {different > 0 ? (
        <p>{counted(different, 'run')} are here with other words or numbers. What is here stays.</p>
      ) : null}
      {ignored.length > 0 ? <p>Columns left aside: {listing(ignored)}.</p> : null}
    </Notice>
  );
}

function useTakeIn(onDone: () => void) {
  const writeAll = useWriteAll();
  return async ({ entries }: ReadLog) => {
    const done = await writeAll(
      (current) => withLogEntries(current, entries, newId),
      'The runs are in the log.',
    );
    if (done.ok) onDone();
  };
}
