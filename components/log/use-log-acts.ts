import { useState } from 'react';
import { useHours } from '@/components/store/use-clock-zone';
import type { Write } from '@/components/store/use-write';
import { useHold } from '@/components/ui/use-hold';
import type { Setting } from '@/lib/carb/machine';
import { withRunTold } from '@/lib/night/records';
import type { RunToLog } from '@/lib/night/to-log';
import type { LogRecord, Stored } from '@/lib/store/records';
import { loggedRunText, verdictText } from '@/lib/words/log';
import { settingText } from '@/lib/words/settings';

export type LogActs = {
  /** The runs as they stand; for a moment after a tap as they stood, so that a second tap meets nothing else. */
  readonly shown: readonly RunToLog[];
  readonly held: boolean;
  /** The entry that was made last, as long as it is in the log. */
  readonly noted: Stored<LogRecord> | null;
  /** "It was made on this." */
  readonly tell: (run: RunToLog, setting: Setting) => void;
  /** "That is how it was." */
  readonly say: (run: RunToLog, entry: LogRecord) => void;
  readonly takeBack: (entry: Stored<LogRecord>) => void;
};

type ActsOf = {
  readonly write: Write;
  readonly log: readonly Stored<LogRecord>[];
  readonly waiting: readonly RunToLog[];
};

/** What a person says after a run, written at once and with a way back. */
export function useLogActs({ write, log, waiting }: ActsOf): LogActs {
  const hours = useHours();
  const { held, hold } = useHold();
  const [before, setBefore] = useState(waiting);
  const [last, setLast] = useState<LogRecord | null>(null);
  const shown = held === null ? waiting : before;
  const tapped = (run: RunToLog) => {
    setBefore(shown);
    hold(run.entry.at);
  };
  return {
    shown,
    held: held !== null,
    noted: last === null ? null : (log.find(({ value }) => isOf(value, last)) ?? null),
    tell: (run, setting) => {
      const { machineId, eventId } = run.entry;
      if (eventId === null) return;
      tapped(run);
      void write.change(
        { table: 'events', id: eventId },
        (event) => withRunTold(event, { machineId, run: run.given, setting }),
        `${run.name} was made on ${settingText(setting)}.`,
      );
    },
    say: (run, entry) => {
      tapped(run);
      setLast(entry);
      void write.add('log', entry, `${run.name}: ${verdictText(entry)}. Time and note can be added below.`);
    },
    takeBack: (entry) => void write.remove('log', entry, `${loggedRunText(entry.value, hours)} is deleted.`),
  };
}

const isOf = (a: LogRecord, b: LogRecord): boolean =>
  a.machineId === b.machineId && a.eventId === b.eventId && a.at === b.at;
