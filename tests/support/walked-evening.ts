import { type Acts, actsOn, type DeedWords } from '@/components/night/use-acts';
import { writeTo } from '@/components/store/use-write';
import type { ToastWords } from '@/components/ui/toast';
import type { MachineJson } from '@/lib/contract/machine';
import { DEMO_EVENT_ID, DEMO_MACHINE_ID } from '@/lib/night/living-demo';
import { type Night, type NightRecords, nightFrom } from '@/lib/night/night';
import { makePlan } from '@/lib/plan/make-plan';
import { expectOk } from '@/lib/result/result';
import { keptNight } from '@/lib/share/kept-night';
import { packNight, unpackNight } from '@/lib/share/night-link';
import { sharedNightOf } from '@/lib/share/shared-night-of';
import type { Standing } from '@/lib/standing/standing';
import { changeRecord } from '@/lib/store/change-record';
import { memoryBacking } from '@/lib/store/memory';
import { openStore } from '@/lib/store/open-store';
import type { EventRecord, LogRecord } from '@/lib/store/records';
import type { Store } from '@/lib/store/store-type';
import { tableCache } from '@/lib/store/table-cache';
import { addMinutes, type Instant } from '@/lib/time/instant';
import { chicago } from '@/tests/night/night-case';
import { followedDemo } from '@/tests/support/followed-demo';
import { standNight } from '@/tests/support/stand-night';

/** A page that is open in a tab: what it shows may be older than what is stored. */
type Tab = { readonly store: Store; shown: NightRecords; toast: ToastWords | null; drawn: Drawn | null };

/** What is shown of records at a moment: the same records at the same moment are planned once. */
type Drawn = {
  readonly of: NightRecords;
  readonly at: Instant;
  readonly night: Night;
  readonly standing: Standing;
};

/** The machine and the air of an evening. */
export type EveningStart = {
  readonly machine: Partial<Pick<MachineJson, 'carburettors' | 'box' | 'trim' | 'jetMarking'>>;
  /** Colder than the demo's evening by so much [K]. */
  readonly colder: number;
};

export type Act = { readonly before: EventRecord; readonly after: EventRecord; readonly words: string };

/** An evening as it is stored, with two tabs open on it, told through the very acts of the page. */
export class WalkedEvening {
  now: Instant = chicago('2027-01-16', '18:20');
  #eventId = DEMO_EVENT_ID;
  #machineId = DEMO_MACHINE_ID;
  #ids = 0;

  private constructor(private readonly tabs: readonly [Tab, Tab]) {}

  static async start({ machine, colder }: EveningStart): Promise<WalkedEvening> {
    const backing = memoryBacking();
    const open = () =>
      openStore({
        open: async () => backing,
        now: () => Date.UTC(2027, 0, 17),
        askToPersist: async () => null,
        isPersisted: async () => null,
      });
    const [one, two] = [await open(), await open()];
    const demo = followedDemo(chicago('2027-01-16', '18:20'));
    const value = { ...demo.machine, machine: { ...demo.machine.machine, ...machine } };
    expectOk(await one.put('machines', DEMO_MACHINE_ID, value, null));
    expectOk(await one.put('events', DEMO_EVENT_ID, colderBy(demo.event, colder), null));
    const shown = await recordsIn(one, DEMO_EVENT_ID, DEMO_MACHINE_ID);
    return new WalkedEvening([
      { store: one, shown, toast: null, drawn: null },
      { store: two, shown, toast: null, drawn: null },
    ]);
  }

  get machineId(): string {
    return this.#machineId;
  }

  wait(minutes: number): void {
    this.now = addMinutes(this.now, minutes);
  }

  /** A tab shows what is stored by now. */
  async look(tab: 0 | 1): Promise<void> {
    this.tabs[tab].shown = await this.records();
  }

  records(): Promise<NightRecords> {
    return recordsIn(this.tabs[0].store, this.#eventId, this.#machineId);
  }

  async record(): Promise<EventRecord> {
    return (await this.records()).event.value;
  }

  /** What a tab shows now. */
  shown(tab: 0 | 1): { readonly night: Night; readonly standing: Standing } {
    const here = this.tabs[tab];
    if (here.drawn?.of !== here.shown || here.drawn.at !== this.now) {
      const night = expectOk(nightFrom(here.shown));
      const standing = expectOk(standNight(night, this.now));
      here.drawn = { of: here.shown, at: this.now, night, standing };
    }
    return here.drawn;
  }

  /** What a press on something that a tab shows does. */
  async press(tab: 0 | 1, press: (acts: Acts, standing: Standing) => void): Promise<Act> {
    const shown = this.shown(tab);
    const pressed: DeedWords[] = [];
    press(
      actsOn(
        shown,
        (act) => pressed.push(act),
        async (request) => makePlan(request),
      ),
      shown.standing,
    );
    const before = await this.record();
    for (const act of pressed) await this.#write(tab, act);
    return { before, after: await this.record(), words: this.#saidIn(tab) };
  }

  async #write(tab: 0 | 1, { change, words, ...wayBack }: DeedWords): Promise<void> {
    const { store } = this.tabs[tab];
    const say = (words: ToastWords) => {
      this.tabs[tab].toast = words;
    };
    const write = writeTo({ store, tables: tableCache(store) }, say);
    await write.change({ table: 'events', id: this.#eventId }, change, words, wayBack);
  }

  canUndo(tab: 0 | 1): boolean {
    return this.tabs[tab].toast?.act !== undefined;
  }

  /** The Undo of what a tab said last; it is gone once it was pressed. */
  async undo(tab: 0 | 1): Promise<Act> {
    const before = await this.record();
    const { toast } = this.tabs[tab];
    this.tabs[tab].toast = null;
    await toast?.act?.do();
    return { before, after: await this.record(), words: this.#saidIn(tab) };
  }

  #saidIn(tab: 0 | 1): string {
    return this.tabs[tab].toast?.text ?? '';
  }

  /** A change of the record that is no act of the plate: a reading. */
  async change(change: (record: EventRecord) => EventRecord): Promise<void> {
    const { store } = this.tabs[0];
    expectOk(await changeRecord(store, { table: 'events', id: this.#eventId }, change));
  }

  async log(entry: LogRecord): Promise<void> {
    const value = { ...entry, machineId: this.#machineId, eventId: this.#eventId };
    expectOk(await this.tabs[0].store.put('log', this.#newId(), value, null));
  }

  /** Shared as a link, opened and kept where nothing of it is; both tabs go on with the night that was kept. */
  async shareAndOpen(): Promise<void> {
    await this.look(0);
    const { night, standing } = this.shown(0);
    const shared = sharedNightOf({ night, plan: standing.plan, sharedAt: this.now, exactPlace: true });
    const opened = expectOk(unpackNight(packNight(shared)));
    const kept = keptNight(opened, () => this.#newId());
    const { store } = this.tabs[0];
    await this.#forget('events', kept.event.id);
    for (const { id } of kept.machines) await this.#forget('machines', id);
    for (const { id, value } of kept.machines) expectOk(await store.put('machines', id, value, null));
    if (kept.forecast !== null)
      expectOk(await store.put('forecasts', kept.forecast.id, kept.forecast.value, null));
    expectOk(await store.put('events', kept.event.id, kept.event.value, null));
    this.#eventId = kept.event.id;
    this.#machineId = kept.machines[0]!.id;
    for (const tab of [0, 1] as const) {
      this.tabs[tab].toast = null;
      await this.look(tab);
    }
  }

  async #forget(table: 'events' | 'machines', id: string): Promise<void> {
    const { store } = this.tabs[0];
    const here = await store.get(table, id);
    if (here !== null) expectOk(await store.remove(table, id, here.revision));
  }

  close(): void {
    for (const { store } of this.tabs) store.close();
  }

  #newId(): string {
    this.#ids += 1;
    return `kept-${this.#ids}`;
  }
}

/** All that a record says of a machine's engine; absent and empty are the same. */
export function engineOf(record: EventRecord, id: string): readonly unknown[] {
  const { fitted, fittings, made, accepted, acceptedAir, outFrom } = record;
  return [fitted, fittings, made, accepted, acceptedAir, outFrom].map((all) => all?.[id] ?? null);
}

export const runsOf = ({ event }: EventRecord): readonly unknown[] => event.runs;

async function recordsIn(store: Store, eventId: string, machineId: string): Promise<NightRecords> {
  const event = await store.get('events', eventId);
  const machine = await store.get('machines', machineId);
  if (event === null || machine === null) throw new Error('the night must be stored');
  const { forecastId } = event.value;
  const forecast = forecastId === null ? null : await store.get('forecasts', forecastId);
  const log = (await store.list('log')).map(({ value }) => value);
  return {
    event,
    machine,
    box: null,
    forecast: forecast?.value ?? null,
    log: log.filter((entry) => entry.eventId === eventId && entry.machineId === machineId),
  };
}

function colderBy(event: EventRecord, kelvins: number): EventRecord {
  const { typed } = event;
  if (typed === null) throw new Error('the demo night has typed hours');
  const hours = typed.hours.map((hour) => ({ ...hour, temperatureC: hour.temperatureC - kelvins }));
  return { ...event, typed: { ...typed, hours } };
}
