'use client';

import { useMemo } from 'react';
import { changeRecord } from '@/components/store/change-record';
import { type OpenedStore, useOpenedStore } from '@/components/store/store-provider';
import { type ToastWords, useToast } from '@/components/ui/toast';
import type { Setting } from '@/lib/carb/machine';
import type { Plan } from '@/lib/plan/types';
import type { EventRecord } from '@/lib/store/records';
import { runName } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';
import {
  withAcceptedPlan,
  withFitted,
  withMachineAsBefore,
  withMade,
  withPastMade,
  withRunsAsBefore,
  withRunsMoved,
} from './records';

export type Acts = {
  /** "This is my plan." */
  readonly accept: () => void;
  /** "I have fitted it." */
  readonly fit: (setting: Setting) => void;
  /** "The run is made"; counted in the plan's own order. */
  readonly runMade: (run: number, setting: Setting) => void;
  /** "This run and all after it come so much later"; counted in the plan's own order. */
  readonly moveRuns: (run: number, minutes: number) => void;
};

type ActsOf = { readonly eventId: string; readonly machineId: string; readonly plan: Plan };

/** What a person tells the plan, written at once and with a way back. */
export function useActs({ eventId, machineId, plan }: ActsOf): Acts {
  const opened = useOpenedStore();
  const say = useToast();
  return useMemo(() => {
    const write = (act: ActWords) => {
      if (opened !== null) void writeAct({ opened, say, eventId, ...act });
    };
    /** Whoever acts on a plan has accepted it. */
    const tell = (words: string, change: (record: EventRecord) => EventRecord) =>
      write({
        words,
        change: (record) => withAcceptedPlan(change(withPastMade(record, machineId, plan)), machineId, plan),
        back: (record, before) => withMachineAsBefore(record, machineId, before),
      });
    return {
      accept: () => tell('This is your plan now.', (record) => record),
      fit: (setting) =>
        tell(`Fitted: ${settingText(setting)}.`, (record) => withFitted(record, machineId, setting)),
      runMade: (run, setting) =>
        tell(`${runName(plan, run)} made on ${settingText(setting)}.`, (record) => {
          const made = { machineId, run: plan.order[run] ?? run, setting };
          return withFitted(withMade(record, made), machineId, setting);
        }),
      moveRuns: (run, minutes) =>
        write({
          words: `${runName(plan, run)} and what follows moved by ${minutes} minutes.`,
          change: (record) => withRunsMoved(record, { machineId, runs: plan.order.slice(run), minutes }),
          back: (record, before) => withRunsAsBefore(record, { machineId, before }),
        }),
    };
  }, [opened, say, eventId, machineId, plan]);
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
