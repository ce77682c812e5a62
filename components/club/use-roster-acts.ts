'use client';

import { useMemo } from 'react';
import { useWrite, type Write } from '@/components/store/use-write';
import type { Setting } from '@/lib/carb/machine';
import type { PlannedRacer } from '@/lib/club/racer';
import { accepting } from '@/lib/night/accepting';
import { type ClubRecords, recordsOf } from '@/lib/night/club';
import {
  type Joining,
  withClass,
  withClassOf,
  withJoined,
  withoutClass,
  withoutRacer,
} from '@/lib/night/edit-roster';
import { withAcceptedPlan, withFitted } from '@/lib/night/records';
import type { PlanRequest } from '@/lib/plan/types';
import { pagePlanner } from '@/lib/planner/page-planner';
import type { Soon } from '@/lib/store/change-record';
import type { ClubClass, EventRecord } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { settingText } from '@/lib/words/settings';

type Outcome = ReturnType<Write['change']>;

export type RosterActs = {
  readonly join: (joining: readonly Joining[], words: string) => Outcome;
  readonly leave: (machineId: string, name: string) => Outcome;
  readonly moveTo: (machineId: string, name: string, into: ClubClass | null) => Outcome;
  readonly putClass: (changed: ClubClass, from: readonly (number | null)[]) => Outcome;
  readonly dropClass: (dropped: ClubClass) => Outcome;
  /** "It is in", now or since some moment; whoever acts on a plan has accepted it. */
  readonly fitted: (planned: PlannedRacer, setting: Setting, since?: Instant) => Outcome;
  /** All plans as they stand are what the club goes by. */
  readonly accept: (planned: readonly PlannedRacer[]) => Outcome;
};

/** What a tech does with the roster of an event; every act can be undone. */
export function useRosterActs(records: ClubRecords): RosterActs {
  const write = useWrite();
  return useMemo(() => actsOn(write, records), [write, records]);
}

const plan = (request: PlanRequest) => pagePlanner.ask(request).plan;

function actsOn(write: Write, records: ClubRecords): RosterActs {
  const { id } = records.event;
  const tell = (words: string, change: (record: EventRecord) => Soon<EventRecord>): Outcome =>
    write.change({ table: 'events', id }, change, words);
  return {
    join: (joining, words) => tell(words, (record) => withJoined(record, joining)),
    leave: (machineId, name) =>
      tell(`${name} is off the roster. The machine stays in this browser.`, (record) =>
        withoutRacer(record, machineId),
      ),
    moveTo: (machineId, name, into) =>
      tell(
        into === null ? `${name} runs when everybody does.` : `${name} runs with ${into.name}.`,
        (record) => withClassOf(record, machineId, into?.id ?? null),
      ),
    putClass: (changed, from) =>
      tell(`Class ${changed.name} is saved.`, (record) => withClass(record, changed, from)),
    dropClass: (dropped) =>
      tell(`Class ${dropped.name} is gone; its racers run when everybody does.`, (record) =>
        withoutClass(record, dropped.id),
      ),
    fitted: ({ racer, standing: { now } }, setting, since = now) =>
      tell(`${racer.name}: ${settingText(setting)} is in.`, (record) => {
        const told = withFitted(record, racer.id, { at: since, setting });
        const own = recordsOf(records, racer.id);
        return own === null ? told : accepting(told, own, { now, plan });
      }),
    accept: (planned) =>
      tell('The club goes by this briefing. It changes only for a reason from now on.', (record) =>
        planned.reduce((before, { racer, plan }) => withAcceptedPlan(before, racer.id, plan), record),
      ),
  };
}
