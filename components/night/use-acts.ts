'use client';

import { useMemo } from 'react';
import { useWrite, type WayBack } from '@/components/store/use-write';
import type { Setting } from '@/lib/carb/machine';
import { accepting, type PlansFor, planAfter } from '@/lib/night/accepting';
import type { Night } from '@/lib/night/night';
import {
  machinePart,
  withFitted,
  withMachineAsBefore,
  withMade,
  withOutFrom,
  withoutAddedRun,
  withRunAdded,
  withRunsAsBefore,
  withRunsFrom,
  withRunsMoved,
} from '@/lib/night/records';
import { pagePlanner } from '@/lib/planner/page-planner';
import type { Standing } from '@/lib/standing/standing';
import type { Soon } from '@/lib/store/change-record';
import { eventOfRacer } from '@/lib/store/racer-event';
import type { EventRecord } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { runName } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';

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
  /** Plans what follows from `fit` before it is done; hands back the way to call it off. Absent: nothing is planned. */
  readonly aheadOfFit?: (setting: Setting) => () => void;
};

type ActsOf = { readonly night: Night; readonly standing: Standing };

/** What a person tells the plan, written at once and with a way back. */
export function useActs({ night, standing }: ActsOf): Acts {
  const write = useWrite();
  return useMemo(() => {
    const key = { table: 'events', id: night.records.event.id } as const;
    const keep = ({ change, words, ...wayBack }: DeedWords) => {
      void write.change(key, change, words, wayBack);
    };
    const acts = actsOn({ night, standing }, keep, (request) => pagePlanner.ask(request).plan);
    return {
      ...acts,
      aheadOfFit: (setting) => planAhead({ night, standing }, (acts) => acts.fit(setting)),
    };
  }, [write, night, standing]);
}

/** The same acts, but what follows from them is planned and nothing is told. */
function planAhead({ night, standing }: ActsOf, act: (acts: Acts) => void): () => void {
  const { plan, stop } = pagePlanner.ahead();
  const { records } = night;
  const think = ({ change }: DeedWords) => {
    // A fault is one for whoever really asks.
    planAfter(change, records, { now: standing.now, plan }).catch(stop);
  };
  act(actsOn({ night, standing }, think, plan));
  return stop;
}

/** The acts on a night, each handed to `write` with its words and its way back; `plan` plans what follows from them. */
export function actsOn(
  { night, standing }: ActsOf,
  write: (act: DeedWords) => void,
  plan: PlansFor['plan'],
): Acts {
  const { plan: shown, now } = standing;
  const machineId = night.records.machine.id;
  const engine = {
    part: (record: EventRecord) => machinePart(record, machineId),
    back: (record: EventRecord, before: EventRecord) => withMachineAsBefore(record, machineId, before),
  };
  const schedule = {
    part: (record: EventRecord) => eventOfRacer(record, machineId).runs,
    back: (record: EventRecord, before: EventRecord) => withRunsAsBefore(record, { machineId, before }),
  };
  const tell = (words: string, change: (record: EventRecord) => EventRecord) =>
    write({ words, change: (record) => accepting(change(record), night.records, { now, plan }), ...engine });
  const leave = (words: string, at: Instant | null) =>
    write({ words, change: (record) => withOutFrom(record, machineId, at), ...engine });
  return {
    accept: () => tell('This is your plan now.', (record) => record),
    fit: (setting, since = now) =>
      tell(`${settingText(setting)} is in.`, (record) =>
        withFitted(record, machineId, { at: since, setting }),
      ),
    runMade: (run, setting) =>
      tell(`${runName(shown, run)} made on ${settingText(setting)}.`, (record) => {
        const made = { machineId, run: shown.order[run] ?? run, setting };
        return withFitted(withMade(record, made), machineId, { at: now, setting });
      }),
    moveRuns: (run, minutes) =>
      write({
        words: `${runName(shown, run)} and what follows moved by ${minutes} minutes.`,
        change: (record) => withRunsMoved(record, { machineId, runs: shown.order.slice(run), minutes }),
        ...schedule,
      }),
    startNow: (run) =>
      write({
        words: `${runName(shown, run)} starts now, and what follows moves along.`,
        change: (record) => withRunsFrom(record, { machineId, runs: shown.order.slice(run), at: now }),
        ...schedule,
      }),
    addRun: () =>
      write({
        words: 'One more run is added at the end.',
        change: (record) => withRunAdded(record, machineId),
        part: schedule.part,
        back: (record, before) => withoutAddedRun(record, { machineId, before }),
      }),
    knockOut: () => leave('Out: the runs to come are left out.', now),
    comeBack: () => leave('Back in.', null),
  };
}

/** What an act changed, its way back puts in its old place. */
export type DeedWords = WayBack<EventRecord> & {
  readonly words: string;
  readonly change: (record: EventRecord) => Soon<EventRecord>;
};
