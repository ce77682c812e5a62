'use client';

import { useEffect, useMemo, useState } from 'react';
import { deviceZone } from '@/components/event/zones';
import { useNight } from '@/components/night/use-night';
import { useHours } from '@/components/store/use-clock-zone';
import { useNow } from '@/components/store/use-now';
import { usePreferences } from '@/components/store/use-preferences';
import { useTable } from '@/components/store/use-table';
import { useWrite, type Write } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Section } from '@/components/ui/section';
import { ButtonRow } from '@/components/ui/stack';
import { withItsEvent } from '@/lib/night/event-of-run';
import { ALL_RUNS, filteredLog } from '@/lib/store/log-filter';
import type { EventRecord, LogRecord, MachineRecord, Stored } from '@/lib/store/records';
import { machineNames } from '@/lib/store/roster-names';
import { localDate } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { counted } from '@/lib/words/listing';
import { loggedRunText } from '@/lib/words/log';
import { LogEntryForm } from './log-entry-form';
import { LogFile } from './log-file';
import { LogFilterFields } from './log-filter-fields';
import { LogTable } from './log-table';
import { RunsToLog } from './runs-to-log';

/** All runs of this browser, and the one that was just made. */
export function LogRoom() {
  const log = useTable('log');
  const machines = useTable('machines');
  const events = useTable('events');
  const write = useWrite();
  const { preferences: units } = usePreferences();
  const now = useNow();
  const night = useNight();
  const [stands, setStands] = useState(false);
  const isRead = log !== null && machines !== null && events !== null && now !== null;
  // What is asked of the last run stands above all runs and would push them down. Once it stands, no later plan is waited for.
  const shows = isRead && (night.status !== 'opening' || stands);
  useEffect(() => {
    if (shows) setStands(true);
  }, [shows]);
  if (!isRead || !shows) return <p>Opening the log…</p>;
  const zone = deviceZone();
  return (
    <>
      <div data-for="screen">
        <RunsToLog state={night} log={log} units={units} write={write} />
      </div>
      <AllRuns {...{ log, machines, events, write, units, zone }} today={localDate(now, zone)} />
    </>
  );
}

type AllRunsProps = {
  readonly log: readonly Stored<LogRecord>[];
  readonly machines: readonly Stored<MachineRecord>[];
  readonly events: readonly Stored<EventRecord>[];
  readonly write: Write;
  readonly units: UnitChoice;
  readonly today: string;
  readonly zone: string;
};

function AllRuns({ log, machines, events, write, units, today, zone }: AllRunsProps) {
  const hours = useHours();
  const [filter, setFilter] = useState(ALL_RUNS);
  const [edited, setEdited] = useState<Stored<LogRecord> | 'new' | null>(null);
  const names = useMemo(() => machineNames(machines), [machines]);
  const entries = useMemo(() => filteredLog(log, filter), [log, filter]);
  /** A save may end after another form was opened: that one stays. */
  const close = () => setEdited((open) => (open === edited ? null : open));
  const before = edited === null || edited === 'new' ? null : edited;
  const save = async (entry: LogRecord) => {
    const refused =
      before === null
        ? await write.add('log', withItsEvent(entry, events), 'The run is in the log.')
        : await write.change({ table: 'log', id: before.id }, () => entry, 'The run is changed.');
    if (refused === undefined) close();
    return refused;
  };
  return (
    <Section
      title="Runs"
      aside={log.length === 0 ? undefined : `${entries.length} of ${counted(log.length, 'run')}`}
    >
      <ButtonRow>
        <Button onClick={() => setEdited('new')} disabled={machines.length === 0}>
          Add a run by hand
        </Button>
      </ButtonRow>
      {log.length === 0 ? null : <LogFilterFields filter={filter} names={names} onChange={setFilter} />}
      <LogTable
        entries={entries}
        names={names}
        units={units}
        empty={<NoRuns isEmpty={log.length === 0} />}
        onEdit={setEdited}
        onRemove={(entry) =>
          void write.remove('log', entry, `${loggedRunText(entry.value, hours)} is deleted.`)
        }
      />
      <LogFile entries={entries} log={log} names={names} units={units} today={today} />
      <Dialog
        title={before === null ? 'A run' : loggedRunText(before.value, hours)}
        open={edited !== null}
        onClose={close}
      >
        <LogEntryForm
          id={before?.id ?? 'new'}
          before={before?.value ?? null}
          {...{ machines, units, today, zone }}
          onSave={save}
          onCancel={close}
        />
      </Dialog>
    </Section>
  );
}

/** What is said in place of runs, and on a screen what to do about it. */
function NoRuns({ isEmpty }: { readonly isEmpty: boolean }) {
  return isEmpty ? (
    <>
      No run yet.{' '}
      <span data-for="screen">After a run it shows up above; or add one by hand, or take in a CSV.</span>
    </>
  ) : (
    <>
      No run fits. <span data-for="screen">Widen the search.</span>
    </>
  );
}
