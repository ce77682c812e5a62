'use client';

import { useMemo } from 'react';
import { useNow } from '@/components/store/use-now';
import { usePreferences } from '@/components/store/use-preferences';
import { useShownTable, useTable } from '@/components/store/use-table';
import { chosenEvent, chosenMachine, weatherOfEvent } from '@/lib/night/chosen';
import { logOf, type Night, type NightProblem, type NightRecords, nightFrom } from '@/lib/night/night';
import { type Standing, standingOf } from '@/lib/standing/standing';
import type { EventRecord, Preferences, Stored } from '@/lib/store/records';
import { useDemo } from './use-demo';
import { type PlannedAt, usePlanned } from './use-planned';

export type NightState =
  | { readonly status: 'opening' }
  | { readonly status: 'no-event' }
  | { readonly status: 'no-machine'; readonly event: Stored<EventRecord> }
  | { readonly status: 'problem'; readonly records: NightRecords; readonly problem: NightProblem }
  | {
      readonly status: 'ready';
      readonly night: Night;
      readonly standing: Standing;
      readonly preferences: Preferences;
    };

/** The chosen night, planned: again with every change of its records, and when the clock asks for another plan. */
export function useNight(): NightState {
  const now = useNow();
  const refused = useDemo(now);
  const { preferences, known } = usePreferences();
  const events = useShownTable('events');
  const machines = useTable('machines');
  const boxes = useTable('boxes');
  const forecasts = useTable('forecasts');
  const log = useTable('log');
  const event = events === null ? null : chosenEvent(events, preferences);
  const machine = event === null || machines === null ? null : chosenMachine(event, machines, preferences);
  const records = useMemo<NightRecords | null>(() => {
    if (event === null || events === null || machine === null) return null;
    if (boxes === null || forecasts === null || log === null) return null;
    const box = boxes.find(({ id }) => id === machine.value.boxId)?.value ?? null;
    const weather = weatherOfEvent(event, { events, forecasts });
    return { event, machine, box, log: logOf(log, event, machine.id), ...weather };
  }, [event, machine, boxes, forecasts, log, events]);
  const night = useMemo(() => (records === null ? null : nightFrom(records)), [records]);
  const planned = usePlanned(night?.ok === true ? night.value : null, now);
  const standing = useStanding(planned);
  if (!known || now === null || events === null || machines === null) return { status: 'opening' };
  if (event === null) return { status: refused ? 'no-event' : 'opening' };
  if (machine === null) return { status: 'no-machine', event };
  if (records === null || night === null) return { status: 'opening' };
  if (!night.ok) return { status: 'problem', records, problem: night.reason };
  if (planned === null) return { status: 'opening' };
  const { plan, night: shown } = planned;
  if (!plan.ok)
    return { status: 'problem', records: shown.records, problem: { code: 'plan', problem: plan.reason } };
  return standing === null ? { status: 'opening' } : { status: 'ready', night: shown, standing, preferences };
}

/** One answer to one question: as long as the same plan holds at the same time, the same standing. */
function useStanding(planned: PlannedAt | null): Standing | null {
  const plan = planned?.plan.ok === true ? planned.plan.value : null;
  const request = planned?.night.request ?? null;
  const now = planned?.now ?? null;
  return useMemo(
    () => (plan === null || request === null || now === null ? null : standingOf({ ...request, now }, plan)),
    [plan, request, now],
  );
}
