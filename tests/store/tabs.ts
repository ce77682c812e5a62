import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { openStore, type StoreOptions } from '@/lib/store/open-store';
import type { BoxRecord, EventRecord, MachineRecord } from '@/lib/store/records';
import { machineRecordSchema } from '@/lib/store/records';
import type { Store, StoreChange } from '@/lib/store/store-type';

/** A browser that has never been here. */
export function freshBrowser(): void {
  globalThis.indexedDB = new IDBFactory();
}

const START = Date.UTC(2027, 0, 16, 18, 0);

/** A clock that moves a second with every look. */
export function ticking(start = START): () => number {
  let now = start;
  return () => {
    now += 1000;
    return now;
  };
}

const open: Store[] = [];

export async function openTab(options: StoreOptions = {}): Promise<Store> {
  const store = await openStore({ now: ticking(), askToPersist: async () => null, ...options });
  open.push(store);
  return store;
}

export function closeTabs(): void {
  for (const store of open.splice(0)) store.close();
}

export function box(name: string, ...sizes: number[]): BoxRecord {
  return { name, entries: sizes.map((size) => ({ size, count: 2 })) };
}

export function machine(name: string, main = 410): MachineRecord {
  return machineRecordSchema.parse({
    machine: {
      name,
      carburettors: [{ main }, { main }],
      box: [
        { size: 400, count: 2 },
        { size: main, count: 2 },
      ],
      baseline: { air: { temperatureC: -10, pressureHpa: 985, relativeHumidity: 0.8 } },
    },
  });
}

export function event(name: string): EventRecord {
  return {
    event: { name, timezone: 'America/Chicago', elevationM: 250, runs: [], swapMinutes: 15, ride: false },
    machineIds: ['m1'],
    typed: null,
    forecastId: null,
    readings: [],
    accepted: {},
    fitted: {},
    made: {},
    demo: false,
  };
}

/** Collects what a subscriber hears. */
export function hearing(store: Store): StoreChange[] {
  const heard: StoreChange[] = [];
  store.subscribe((change) => heard.push(change));
  return heard;
}

/** Until what is told between tabs has arrived. */
export async function settled(): Promise<void> {
  for (let i = 0; i < 5; i++) await new Promise((resolve) => setTimeout(resolve, 2));
}
