'use client';

import { useMemo } from 'react';
import { useWrite, type Write } from '@/components/store/use-write';
import type { Setting } from '@/lib/carb/machine';
import type { PlannedRacer } from '@/lib/club/racer';
import { accepting } from '@/lib/night/accepting';
import { type ClubRecords, recordsOf } from '@/lib/night/club';
import {
  type Joining,
  withCalled,
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

type FittedNow = {
  readonly racer: PlannedRacer;
  readonly setting: Setting;
  /** Absent: since now. */
  readonly since: Instant | undefined;
};

export type RosterActs = {
  readonly join: (joining: readonly Joining[], words: string) => Outcome;
  readonly leave: (machineId: string, name: string) => Outcome;
  readonly moveTo: (machineId: string, name: string, into: ClubClass | null) => Outcome;
  /** What a racer is called at the event, and the number. */
  readonly call: (
    machineId: string,
    called: { readonly name: string; readonly bib: string | undefined },
  ) => Outcome;
  readonly putClass: (changed: ClubClass, from: readonly (number | null)[]) => Outcome;
  readonly dropClass: (dropped: ClubClass) => Outcome;
  /** "It is in", now or since some moment; whoever acts on a plan has accepted it. */
  readonly fitted: (planned: PlannedRacer, setting: Setting, since?: Instant) => Outcome;
  /** What several have in, told as one act and undone as one. */
  readonly allFitted: (told: readonly FittedNow[], words: string) => Outcome;
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
    call: (machineId, called) => tell('Racer saved.', (record) => withCalled(record, machineId, called)),
    putClass: (changed, from) =>
      tell(`Class ${changed.name} is saved.`, (record) => withClass(record, changed, from)),
    dropClass: (dropped) =>
      tell(`Class ${dropped.name} is gone; its racers run when everybody does.`, (record) =>
        withoutClass(record, dropped.id),
      ),
    fitted: ({ racer, standing: { now } }, setting, since = now) =>
      tell(`${racer.name}: ${settingText(setting)} is in.`, (record) =>
        withFittedPlan(record, records, { id: racer.id, setting, since, now }),
      ),
    allFitted: (all, words) =>
      tell(words, async (record) => {
        let told = record;
        for (const { racer, setting, since } of all) {
          const { now } = racer.standing;
          const toldIn = { id: racer.racer.id, setting, since: since ?? now, now };
          told = await withFittedPlan(told, records, toldIn);
        }
        return told;
      }),
    accept: (planned) =>
      tell('The club goes by this briefing. It changes only for a reason from now on.', (record) =>
        planned.reduce((before, { racer, plan }) => withAcceptedPlan(before, racer.id, plan), record),
      ),
  };
}

type ToldIn = {
  readonly id: string;
  readonly setting: Setting;
  readonly since: Instant;
  readonly now: Instant;
};

/** What is in since some moment, and the plan it leads to as the accepted one. */
function withFittedPlan(
  record: EventRecord,
  records: ClubRecords,
  { id, setting, since, now }: ToldIn,
): Soon<EventRecord> {
  const told = withFitted(record, id, { at: since, setting });
  const own = recordsOf(records, id);
  return own === null ? told : accepting(told, own, { now, plan });
}
