'use client';

import { useMemo } from 'react';
import { changeRecord } from '@/components/store/change-record';
import { type OpenedStore, useOpenedStore } from '@/components/store/store-provider';
import { type ToastWords, useToast } from '@/components/ui/toast';
import type { Setting } from '@/lib/carb/machine';
import type { Standing } from '@/lib/standing/standing';
import type { EventRecord } from '@/lib/store/records';
import { type Instant, MINUTE_MS } from '@/lib/time/instant';
import { runName } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';
import { accepting } from './accepting';
import type { Night } from './night';
import {
  withFitted,
  withMachineAsBefore,
  withMade,
  withOutFrom,
  withoutAddedRun,
  withRunAdded,
  withRunsAsBefore,
  withRunsMoved,
} from './records';

export type Acts = {
  /** "This is my plan." */
  readonly accept: () => void;
  /** "It is in", now or since some moment. */
  readonly fit: (setting: Setting, since?: Instant) => void;
  /** "The run is made"; counted in the plan's own order. */
  readonly runMade: (run: number, setting: Setting) => void;
  /** "This run and all after it come so much later"; counted in the plan's own order. */
  readonly moveRuns: (run: number, minutes: number) => void;
  /** "This run starts now", and all after it moves along. */
  readonly startNow: (run: number) => void;
  /** "There is one more run." */
  readonly addRun: () => void;
  /** "Knocked out", and the way back. */
  readonly knockOut: () => void;
  readonly comeBack: () => void;
};

type ActsOf = { readonly night: Night; readonly standing: Standing };

/** What a person tells the plan, written at once and with a way back. */
export function useActs({ night, standing }: ActsOf): Acts {
  const opened = useOpenedStore();
  const say = useToast();
  return useMemo(() => {
    const eventId = night.records.event.id;
    return actsOn({ night, standing }, (act) => {
      if (opened !== null) void writeAct({ opened, say, eventId, ...act });
    });
  }, [opened, say, night, standing]);
}

/** The acts on a night, each handed to `write` with its words and its way back. */
function actsOn({ night, standing }: ActsOf, write: (act: ActWords) => void): Acts {
  const { plan, now } = standing;
  const machineId = night.records.machine.id;
  const asBefore = (record: EventRecord, before: EventRecord) =>
    withMachineAsBefore(record, machineId, before);
  const tell = (words: string, change: (record: EventRecord) => EventRecord) =>
    write({ words, change: (record) => accepting(change(record), night.records, now), back: asBefore });
  const leave = (words: string, at: Instant | null) =>
    write({ words, change: (record) => withOutFrom(record, machineId, at), back: asBefore });
  const move = (run: number, minutes: number, words: string) =>
    write({
      words,
      change: (record) => withRunsMoved(record, { machineId, runs: plan.order.slice(run), minutes }),
      back: (record, before) => withRunsAsBefore(record, { machineId, before }),
    });
  return {
    accept: () => tell('This is your plan now.', (record) => record),
    fit: (setting, since = now) =>
      tell(`Fitted: ${settingText(setting)}.`, (record) =>
        withFitted(record, machineId, { at: since, setting }),
      ),
    runMade: (run, setting) =>
      tell(`${runName(plan, run)} made on ${settingText(setting)}.`, (record) => {
        const made = { machineId, run: plan.order[run] ?? run, setting };
        return withFitted(withMade(record, made), machineId, { at: now, setting });
      }),
    moveRuns: (run, minutes) =>
      move(run, minutes, `${runName(plan, run)} and what follows moved by ${minutes} minutes.`),
    startNow: (run) => {
      const start = plan.sortedRuns[run]?.start ?? now;
      const minutes = Math.round((now - start) / MINUTE_MS);
      move(run, minutes, `${runName(plan, run)} starts now; what follows moved by ${minutes} minutes.`);
    },
    addRun: () =>
      write({
        words: 'One more run is added at the end.',
        change: (record) => withRunAdded(record, machineId),
        back: (record, before) => withoutAddedRun(record, { machineId, before }),
      }),
    knockOut: () => leave('Out: the runs to come are left out.', now),
    comeBack: () => leave('Back in.', null),
  };
}

type ActWords = {
  readonly words: string;
  readonly change: (record: EventRecord) => EventRecord;
  readonly back: (record: EventRecord, before: EventRecord) => EventRecord;
};
type Act = ActWords & {
  readonly opened: OpenedStore;
  readonly say: (words: ToastWords) => void;
  readonly eventId: string;
};

async function writeAct({ opened, say, words, eventId, change, back }: Act): Promise<void> {
  const written = await changeRecord(opened.store, { table: 'events', id: eventId, change });
  if (!written.ok) {
    say({ text: 'That was not kept: the night was changed or removed meanwhile. Look again and repeat it.' });
    return;
  }
  const { before } = written.value;
  const undo = () =>
    void changeRecord(opened.store, {
      table: 'events',
      id: eventId,
      change: (record) => back(record, before),
    });
  say({ text: words, act: { label: 'Undo', do: undo } });
}
