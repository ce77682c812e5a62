'use client';

import { useEffect } from 'react';
import { useOpenedStore } from '@/components/store/store-provider';
import { useTable } from '@/components/store/use-table';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { Store } from '@/lib/store/store-type';
import type { Instant } from '@/lib/time/instant';
import { localDate } from '@/lib/time/zone';
import { DEMO_EVENT_ID, DEMO_MACHINE_ID, demoDate, demoNight } from './demo-night';

/** Puts the demo night into an empty store, and dates it anew when its night is over. */
export function useDemo(now: Instant | null): void {
  const opened = useOpenedStore();
  const events = useTable('events');
  const evening = now === null ? null : demoDate(now);
  const empty = events !== null && events.length === 0;
  // biome-ignore lint/correctness/useExhaustiveDependencies: once an evening, not with every tick of the clock
  useEffect(() => {
    if (opened === null || now === null || events === null) return;
    if (empty) void addDemo(opened.store, now);
    else void redateDemo(opened.store, now);
  }, [opened, empty, evening, events === null]);
}

async function addDemo(store: Store, now: Instant): Promise<void> {
  const demo = demoNight(now);
  if ((await store.get('machines', DEMO_MACHINE_ID)) === null)
    await store.put('machines', DEMO_MACHINE_ID, demo.machine, null);
  await store.put('events', DEMO_EVENT_ID, demo.event, null);
}

async function redateDemo(store: Store, now: Instant): Promise<void> {
  const stored = await store.get('events', DEMO_EVENT_ID);
  const first = stored?.value.event.runs[0];
  if (stored === null || first === undefined || !stored.value.demo) return;
  const date = localDate(instantFromJson(first.start), stored.value.event.timezone);
  if (date !== demoDate(now)) await store.put('events', DEMO_EVENT_ID, demoNight(now).event, stored.revision);
}
