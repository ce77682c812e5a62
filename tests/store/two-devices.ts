import { isDeepStrictEqual } from 'node:util';
import { afterAll, beforeAll, vi } from 'vitest';
import type { Setting } from '@/lib/carb/machine';
import { recordWithEvent } from '@/lib/night/record-with-event';
import { withFitted, withMade } from '@/lib/night/records';
import { expectOk } from '@/lib/result/result';
import { type Backup, readBackup, writeBackup } from '@/lib/store/backup-file';
import { withBackup } from '@/lib/store/backup-import';
import { memoryBacking } from '@/lib/store/memory';
import { openStore } from '@/lib/store/open-store';
import { type EventRecord, logRecordSchema, type Stored } from '@/lib/store/records';
import type { Rewritten, Snapshot, SnapshotValues, Store } from '@/lib/store/store-type';
import { NO_TRACE } from '@/lib/store/trace-schema';
import { undoRewrite } from '@/lib/store/undo-rewrite';
import { instant } from '@/lib/time/instant';
import { event, machine } from './tabs';

export const MADE_AT = '2027-01-16T20:00:00.000Z';
export const START = Date.UTC(2027, 0, 16, 18);
const MINUTE = 60_000;

/** Something a person said, as a number of four digits that stands nowhere else on that evening. */
export type Fact = number;

/** Runs of a night, by name, half an hour apart. */
export const runsOf = (...names: readonly string[]): EventRecord['event']['runs'] =>
  names.map((name, i) => ({
    name,
    start: new Date(START + i * 30 * MINUTE).toISOString(),
    end: new Date(START + i * 30 * MINUTE + 6 * MINUTE).toISOString(),
    weight: 1,
  }));

/** Two devices are no tabs of one browser, and what nobody hears would be kept until the end of the test. */
export function standApart(): void {
  beforeAll(() => vi.stubGlobal('BroadcastChannel', undefined));
  afterAll(() => vi.unstubAllGlobals());
}

/** One device with its clock, and what a model says of it: what was said there, and what somebody took back or replaced. */
export class Device {
  /** What a person took back, or put another in place of, knowing it; on this device or on one merged into it. */
  ended = new Set<Fact>();
  private lastMerge: { readonly done: Rewritten; readonly ended: Set<Fact> } | null = null;

  private constructor(
    readonly name: string,
    readonly store: Store,
  ) {}

  static async open(name: string, now: () => number): Promise<Device> {
    const store = await openStore({
      now,
      device: () => name,
      open: async () => memoryBacking(),
      askToPersist: async () => null,
      isPersisted: async () => null,
    });
    return new Device(name, store);
  }

  async start(): Promise<void> {
    await this.store.rewrite((current) => ({
      ...current,
      machines: [{ id: 'm1', value: machine('Blue 600') }],
      events: [
        {
          id: 'e1',
          value: {
            ...event('Night'),
            event: { ...event('Night').event, runs: runsOf('Round 1', 'Round 2', 'Round 3') },
          },
        },
      ],
    }));
  }

  async event(): Promise<Stored<EventRecord>> {
    const stored = await this.store.get('events', 'e1');
    if (stored === null) throw new Error('the night is gone');
    return stored;
  }

  private async change(change: (record: EventRecord) => EventRecord): Promise<void> {
    const { value, revision } = await this.event();
    const before = factsOf(value);
    const after = change(value);
    expectOk(await this.store.put('events', 'e1', after, revision));
    this.lastMerge = null;
    const left = new Set(factsOf(after));
    for (const fact of before) if (!left.has(fact)) this.ended.add(fact);
  }

  made = (run: number, fact: Fact) =>
    this.change((record) => withMade(record, { machineId: 'm1', run, setting: settingOf(fact) }));

  unmade = (run: number) =>
    this.change((record) => ({
      ...record,
      made: { ...record.made, m1: (record.made.m1 ?? []).filter((each) => each.run !== run) },
    }));

  fitted = (fact: Fact, at: number) =>
    this.change((record) => withFitted(record, 'm1', { at: instant(at), setting: settingOf(fact) }));

  reading = (fact: Fact, at: number) =>
    this.change((record) => ({
      ...record,
      readings: [
        ...record.readings,
        { id: `r${fact}`, time: new Date(at).toISOString(), temperatureC: -9, confirmed: false },
      ],
    }));

  unread = (place: number) =>
    this.change((record) => ({ ...record, readings: record.readings.filter((_, i) => i !== place) }));

  renamed = (name: string) => this.change((record) => ({ ...record, event: { ...record.event, name } }));

  /** The night with other runs; `from` says which run each one was. */
  rerun = (runs: EventRecord['event']['runs'], from: readonly (number | null)[]) =>
    this.change((record) => recordWithEvent(record, { event: { ...record.event, runs }, from }));

  async logged(fact: Fact): Promise<void> {
    this.lastMerge = null;
    const value = logRecordSchema.parse({
      machineId: 'm1',
      at: MADE_AT,
      air: { temperatureC: -9, pressureHpa: 984 },
      setting: { mains: [410, 410] },
      note: String(fact),
    });
    expectOk(await this.store.put('log', `l${fact}`, value, null));
  }

  async noted(place: number, fact: Fact): Promise<void> {
    const entry = (await this.store.list('log'))[place];
    if (entry === undefined) return;
    this.lastMerge = null;
    this.ended.add(Number(entry.value.note));
    expectOk(await this.store.put('log', entry.id, { ...entry.value, note: String(fact) }, entry.revision));
  }

  async unlogged(place: number): Promise<void> {
    const entry = (await this.store.list('log'))[place];
    if (entry === undefined) return;
    this.lastMerge = null;
    this.ended.add(Number(entry.value.note));
    expectOk(await this.store.remove('log', entry.id, entry.revision));
  }

  /** All that is here, as a backup file holds it; `written` takes it through the text of one. */
  async backup(written: boolean): Promise<Backup> {
    const [tables, { setAside }] = [await this.store.snapshot(), this.store.health()];
    return written
      ? expectOk(readBackup(writeBackup(tables, MADE_AT, setAside)))
      : structuredClone({ madeAt: MADE_AT, tables: traced(tables), removed: tables.removed, setAside });
  }

  /** Takes in what the other's backup holds. */
  async merge(other: Device, backup: Backup): Promise<Rewritten> {
    const named = { ...backup, name: other.name };
    const done = expectOk(await this.store.rewrite((current) => withBackup(current, named, 'merge')));
    // Merged once more nothing happens, and there is nothing to take back.
    if (!isDeepStrictEqual(done.after, done.before)) this.lastMerge = { done, ended: this.ended };
    this.ended = new Set([...this.ended, ...other.ended]);
    return done;
  }

  /** Takes the last merge back, where nothing was done since. What stood before it, and what stands now; null: nothing. */
  async undo(): Promise<readonly [string, string] | null> {
    if (this.lastMerge === null) return null;
    const { done, ended } = this.lastMerge;
    this.lastMerge = null;
    expectOk(await undoRewrite(this.store, done));
    this.ended = ended;
    return [standingOn(done.before), standingOn(await this.store.snapshot())];
  }

  /** All that stands on this device. */
  async facts(): Promise<Set<Fact>> {
    const { events, log } = await this.store.snapshot();
    return new Set([
      ...events.flatMap(({ value }) => factsOf(value)),
      ...log.map(({ value }) => Number(value.note)),
    ]);
  }

  /** All that was set aside on it. */
  aside(): Set<Fact> {
    const texts = this.store.health().setAside.map(({ text }) => text);
    return new Set(texts.flatMap((text) => (text.match(/\d{4}/g) ?? []).map(Number)));
  }
}

const settingOf = (fact: Fact): Setting => ({ mains: [fact, fact], trim: null });

const factsOf = ({ made, fitted, fittings, readings }: EventRecord): readonly Fact[] => [
  ...Object.values(made).flatMap((runs) => runs.flatMap(({ setting }) => setting.mains)),
  ...Object.values(fitted).flatMap(({ mains }) => mains),
  ...Object.values(fittings ?? {}).flatMap((all) => all.flatMap(({ setting }) => setting.mains)),
  ...readings.map(({ id = '' }) => Number(id.slice(1))),
];

/** As a file has them: with an empty trace where there is none. */
function traced({ removed: _, ...tables }: Snapshot): Backup['tables'] {
  const entries = Object.entries(tables).map(([table, all]) => [
    table,
    all.map((each) => ({ trace: NO_TRACE, ...each })),
  ]);
  return Object.fromEntries(entries) as Backup['tables'];
}

/** What stands on a device, without the order in which it came, and without lists that hold nothing. */
export function standingOn({ machines, boxes, events, log }: SnapshotValues): string {
  const tables = [machines, boxes, events, log];
  return JSON.stringify(tables.map((table) => sorted(table.map(({ id, value }) => ({ id, value })))));
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map((each) => JSON.stringify(sorted(each))).sort();
  if (typeof value !== 'object' || value === null) return value;
  const fields = Object.entries(value).map(([key, each]) => [key, sorted(each)] as const);
  const said = fields.filter(([, each]) => JSON.stringify(each) !== '[]' && JSON.stringify(each) !== '{}');
  return Object.fromEntries(said.sort(([a], [b]) => (a < b ? -1 : 1)));
}
