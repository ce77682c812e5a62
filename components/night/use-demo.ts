'use client';

import { useEffect, useState } from 'react';
import { type QuietWrite, useQuietWrite } from '@/components/store/use-quiet-write';
import { useTable } from '@/components/store/use-table';
import { demoNight, demoRequest } from '@/lib/night/demo-night';
import type { DemoNight } from '@/lib/night/demo-records';
import { DEMO_EVENT_ID, DEMO_MACHINE_ID, isLiving } from '@/lib/night/living-demo';
import { pagePlanner } from '@/lib/planner/page-planner';
import { expectOk } from '@/lib/result/result';
import type { EventRecord } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';

/**
 * Puts the demo night into an empty store, and the next evening in its place once its last run has started. True once
 * the store has not taken it: until then an empty one is about to have it.
 */
export function useDemo(now: Instant | null): boolean {
  const write = useQuietWrite();
  const events = useTable('events');
  const [refused, setRefused] = useState(false);
  const empty = events?.length === 0;
  const over =
    now === null ? undefined : events?.find(({ id, value }) => id === DEMO_EVENT_ID && isOver(value, now));
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for what the store holds, not with every tick of the clock
  useEffect(() => {
    if (write === null || now === null) return;
    if (empty)
      addDemo(write, now).then(
        (taken) => setRefused(!taken),
        () => setRefused(true),
      );
    else if (over !== undefined) void redateDemo(write, now);
  }, [write, empty, over?.revision]);
  return refused;
}

/** A demo night that somebody made their own is theirs, over or not. */
const isOver = (event: EventRecord, now: Instant): boolean => event.demo && !isLiving(event, now);

async function addDemo(write: QuietWrite, now: Instant): Promise<boolean> {
  const demo = await plannedDemo(now);
  await write({ table: 'machines', id: DEMO_MACHINE_ID }, (there) => (there === null ? demo.machine : null));
  return write({ table: 'events', id: DEMO_EVENT_ID }, (there) => (there === null ? demo.event : null));
}

/** What a visitor noted (fitted jets, readings, delays) belongs to the night it was noted for, and goes with it. */
async function redateDemo(write: QuietWrite, now: Instant): Promise<void> {
  const demo = await plannedDemo(now);
  await write({ table: 'events', id: DEMO_EVENT_ID }, (there) =>
    there !== null && isOver(there, now) ? demo.event : null,
  );
}

async function plannedDemo(now: Instant): Promise<DemoNight> {
  const request = demoRequest(now);
  return demoNight(now, request === null ? null : expectOk(await pagePlanner.ask(request).plan));
}
