import { expect, test } from 'vitest';
import { nightFrom, standNight } from '@/lib/night/night';
import { withFitted, withMade } from '@/lib/night/records';
import { expectOk } from '@/lib/result/result';
import { keptNight } from '@/lib/share/kept-night';
import { racersOfNight, withoutOlder, withRacersAdded } from '@/lib/share/new-racers';
import { packNight, unpackNight } from '@/lib/share/night-link';
import { withNightUpdate } from '@/lib/share/night-update';
import type { SharedNight } from '@/lib/share/shared-night';
import { sharedNightOf } from '@/lib/share/shared-night-of';
import { targetByName, targetOf } from '@/lib/share/update-target';
import { memoryBacking } from '@/lib/store/memory';
import { openStore } from '@/lib/store/open-store';
import type { EventRecord, MachineRecord } from '@/lib/store/records';
import type { SnapshotValues, Store } from '@/lib/store/store-type';
import { addMinutes } from '@/lib/time/instant';
import { METRIC_UNITS } from '@/lib/units/choice';
import { mergedWords } from '@/lib/words/merged';
import { acceptedEvening, SHARED_AT } from '@/tests/support/shared-evening';

let ids = 0;
const newId = () => `id${ids++}`;

const openDevice = (device: string): Promise<Store> =>
  openStore({
    device: () => device,
    open: async () => memoryBacking(),
    askToPersist: async () => null,
    isPersisted: async () => null,
  });

const kept = (night: SharedNight) => (current: SnapshotValues) => {
  const { event, machines, forecast } = keptNight(night, newId);
  return {
    ...current,
    events: [...current.events, event],
    machines: [...current.machines, ...machines],
    forecasts: forecast === null ? current.forecasts : [...current.forecasts, forecast],
  };
};

/** The link that a racer's device makes of its only night, after it went through its text. */
async function linkOf(store: Store): Promise<SharedNight> {
  const { events, machines, forecasts } = await store.snapshot();
  const night = expectOk(
    nightFrom({
      event: events[0]!,
      machine: machines[0]!,
      box: null,
      forecast: forecasts[0]?.value ?? null,
      log: [],
    }),
  );
  const { plan } = expectOk(standNight(night, SHARED_AT));
  const shared = sharedNightOf({ night, plan, sharedAt: SHARED_AT, exactPlace: false });
  return expectOk(unpackNight(packNight(shared)));
}

async function change(
  store: Store,
  next: (event: EventRecord, machineId: string) => EventRecord,
): Promise<void> {
  const [event] = await store.list('events');
  const [machine] = await store.list('machines');
  expectOk(await store.put('events', event!.id, next(event!.value, machine!.id), event!.revision));
}

async function changeMachine(store: Store, next: (record: MachineRecord) => MachineRecord): Promise<void> {
  const [machine] = await store.list('machines');
  expectOk(await store.put('machines', machine!.id, next(machine!.value), machine!.revision));
}

const jets = (size: number) => ({ mains: [size, size], trim: null });

/** What a racer does on the way: it is in, a run made, a reading, one more size in the box. */
async function race(store: Store): Promise<void> {
  await change(store, (event, machineId) => {
    const fitted = withFitted(event, machineId, { at: addMinutes(SHARED_AT, 5), setting: jets(430) });
    const made = withMade(fitted, { machineId, run: 0, setting: jets(430) });
    return {
      ...made,
      readings: [
        ...made.readings,
        { id: 'r-late', time: new Date(SHARED_AT).toISOString(), temperatureC: -13, confirmed: false },
      ],
    };
  });
  await changeMachine(store, (record) => ({
    ...record,
    machine: { ...record.machine, box: [...record.machine.box, { size: 475, count: 1 }] },
  }));
}

async function expectRaced(store: Store): Promise<void> {
  const [event] = await store.list('events');
  const [machine, ...others] = await store.list('machines');
  const { fitted, made, readings, machineIds, fittings } = event!.value;
  expect({ fitted: fitted[machine!.id], made: made[machine!.id], others: others.length }).toEqual({
    fitted: jets(430),
    made: expect.arrayContaining([{ run: 0, setting: jets(430) }]),
    others: 0,
  });
  expect(fittings?.[machine!.id]?.at(-1)?.setting).toEqual(jets(430));
  expect(readings.map(({ id }) => id)).toContain('r-late');
  expect(machine!.value.machine.box).toContainEqual({ size: 475, count: 1 });
  expect(machineIds).toEqual([machine!.id]);
}

const voice = { units: METRIC_UNITS, hours: '24', machineName: () => 'Blue 600' } as const;

test('a night kept from a link and sent back brings what was done, by name, and loses nothing that was done here', async () => {
  const tech = await openDevice('tech');
  expectOk(await tech.rewrite(kept(acceptedEvening())));
  const racer = await openDevice('racer');
  expectOk(await racer.rewrite(kept(await linkOf(tech))));
  await race(racer);
  await change(tech, (event) => ({ ...event, event: { ...event.event, name: 'Renamed by the tech' } }));
  await changeMachine(tech, (record) => ({ ...record, machine: { ...record.machine, intakeOffsetC: 7 } }));
  const back = await linkOf(racer);
  const [event] = await tech.list('events');
  const target = targetOf(back, event!);
  expect(target.machineIds).toEqual([event!.value.machineIds[0]]);
  const { changes } = withNightUpdate(await tech.snapshot(), back, target, 'Ilsa');
  const lines = mergedWords(changes, voice).flatMap((words) => words.lines);
  for (const told of [
    /^What is in Blue 600: .*430/,
    /Blue 600: 430 comes in/,
    /^Reading: −13.0.*comes in/,
    /^Box: 1 of 475 comes in/,
  ])
    expect(lines).toContainEqual(expect.stringMatching(told));
  expectOk(await tech.rewrite((current) => withNightUpdate(current, back, target, 'Ilsa').values));
  await expectRaced(tech);
  const [[after], [machine]] = [await tech.list('events'), await tech.list('machines')];
  expect([after!.value.event.name, machine!.value.machine.intakeOffsetC]).toEqual(['Renamed by the tech', 7]);
  expect(tech.health().setAside).toEqual([]);
  // Once more, nothing.
  const again = withNightUpdate(await tech.snapshot(), back, target, 'Ilsa').changes;
  expect(again.flatMap(({ fields }) => fields)).toEqual([]);
});

test('a racer added to another event by a link is known again by the next one', async () => {
  const racer = await openDevice('racer');
  expectOk(await racer.rewrite(kept(acceptedEvening())));
  const first = await linkOf(racer);
  const tech = await openDevice('tech');
  const own = keptNight(acceptedEvening(), newId).event;
  const mine = {
    ...own.value,
    machineIds: [],
    fitted: {},
    fittings: {},
    made: {},
    accepted: {},
    readings: [],
  };
  expectOk(await tech.put('events', own.id, { ...mine, forecastId: null }, null));
  const add = (racers: ReturnType<typeof racersOfNight>) =>
    tech.rewrite((current) => {
      const next = withRacersAdded(current, { eventId: own.id, racers, newId });
      if (typeof next === 'string') throw new Error(next);
      return next;
    });
  await race(racer);
  const second = await linkOf(racer);
  // Two links of one racer at once are one racer, as the later one has it.
  expect(withoutOlder([...racersOfNight(second), ...racersOfNight(first)])).toEqual(racersOfNight(second));
  expectOk(await add(racersOfNight(first)));
  const [event] = await tech.list('events');
  const target = targetOf(second, event!);
  expectOk(await tech.rewrite((current) => withNightUpdate(current, second, target, 'Ilsa').values));
  await expectRaced(tech);
  expect(tech.health().setAside).toEqual([]);
});

test('a link that does not say whose it is fits one racer by name, and sets aside what nobody can order', async () => {
  const tech = await openDevice('tech');
  expectOk(await tech.rewrite(kept(acceptedEvening())));
  const racer = await openDevice('racer');
  expectOk(await racer.rewrite(kept(acceptedEvening())));
  await race(racer);
  const { id: _, trace: __, machines, ...rest } = await linkOf(racer);
  const old: SharedNight = {
    ...rest,
    machines: machines.map(({ id: ___, trace: ____, ...machine }) => machine),
  };
  const [event] = await tech.list('events');
  expect(targetOf(old, event!).machineIds).toEqual([null]);
  const target = targetByName(old, event!, await tech.list('machines'));
  const done = expectOk(
    await tech.rewrite((current) => withNightUpdate(current, old, target, 'Ilsa').values),
  );
  const here = JSON.stringify([done.after.events, done.after.machines, done.setAside]);
  for (const fact of ['r-late', '475', '430']) expect(here).toContain(fact);
});
