'use client';

import { useEffect } from 'react';
import { useOpenedStore } from '@/components/store/store-provider';
import { useTable } from '@/components/store/use-table';
import { DEMO_EVENT_ID, DEMO_MACHINE_ID, demoNight, isLiving } from '@/lib/night/demo-night';
import type { EventRecord } from '@/lib/store/records';
import type { Store } from '@/lib/store/store-type';
import type { Instant } from '@/lib/time/instant';

/** Puts the demo night into an empty store, and the next evening in its place once its last run has started. */
export function useDemo(now: Instant | null): void {
  const opened = useOpenedStore();
  const events = useTable('events');
  const empty = events?.length === 0;
  const over =
    now === null ? undefined : events?.find(({ id, value }) => id === DEMO_EVENT_ID && isOver(value, now));
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for what the store holds, not with every tick of the clock
  useEffect(() => {
    if (opened === null || now === null) return;
    if (empty) void addDemo(opened.store, now);
    else if (over !== undefined) void redateDemo(opened.store, now);
  }, [opened, empty, over?.revision]);
}

/** A demo night that somebody made their own is theirs, over or not. */
const isOver = (event: EventRecord, now: Instant): boolean => event.demo && !isLiving(event, now);

async function addDemo(store: Store, now: Instant): Promise<void> {
  const demo = demoNight(now);
  if ((await store.get('machines', DEMO_MACHINE_ID)) === null)
    await store.put('machines', DEMO_MACHINE_ID, demo.machine, null);
  await store.put('events', DEMO_EVENT_ID, demo.event, null);
}

/** What a visitor noted (fitted jets, readings, delays) belongs to the night it was noted for, and goes with it. */
async function redateDemo(store: Store, now: Instant): Promise<void> {
  const stored = await store.get('events', DEMO_EVENT_ID);
  if (stored === null || !isOver(stored.value, now)) return;
  await store.put('events', DEMO_EVENT_ID, demoNight(now).event, stored.revision);
}
