'use client';

import { useMemo } from 'react';
import { changeRecord } from '@/components/store/change-record';
import { type OpenedStore, useOpenedStore } from '@/components/store/store-provider';
import { type ToastWords, useToast } from '@/components/ui/toast';
import type { Setting } from '@/lib/carb/machine';
import { settingsAsGiven } from '@/lib/plan/make-plan';
import type { Plan } from '@/lib/plan/types';
import type { EventRecord } from '@/lib/store/records';
import { runName } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';
import { withAccepted, withFitted, withMachineAsBefore, withMade, withPastMade } from './records';

export type Acts = {
  /** "I have fitted it." */
  readonly fit: (setting: Setting) => void;
  /** "The run is made"; counted in the plan's own order. */
  readonly runMade: (run: number, setting: Setting) => void;
};

type ActsOf = { readonly eventId: string; readonly machineId: string; readonly plan: Plan };

/** What a person tells the plan, written at once and with a way back. */
export function useActs({ eventId, machineId, plan }: ActsOf): Acts {
  const opened = useOpenedStore();
  const say = useToast();
  return useMemo(() => {
    const write = (words: string, change: (record: EventRecord) => EventRecord) => {
      if (opened === null) return;
      const accepted = settingsAsGiven(plan);
      const done = (record: EventRecord) =>
        withAccepted(change(withPastMade(record, machineId, plan)), machineId, accepted);
      void writeAct({ opened, say, words, eventId, machineId, change: done });
    };
    return {
      fit: (setting) =>
        write(`Fitted: ${settingText(setting)}.`, (record) => withFitted(record, machineId, setting)),
      runMade: (run, setting) =>
        write(`${runName(plan, run)} made on ${settingText(setting)}.`, (record) =>
          withFitted(
            withMade(record, { machineId, run: plan.order[run] ?? run, setting }),
            machineId,
            setting,
          ),
        ),
    };
  }, [opened, say, eventId, machineId, plan]);
}

type Act = {
  readonly opened: OpenedStore;
  readonly say: (words: ToastWords) => void;
  readonly words: string;
  readonly eventId: string;
  readonly machineId: string;
  readonly change: (record: EventRecord) => EventRecord;
};

async function writeAct({ opened, say, words, eventId, machineId, change }: Act): Promise<void> {
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
      change: (record) => withMachineAsBefore(record, machineId, before),
    });
  say({ text: words, act: { label: 'Undo', do: undo } });
}
