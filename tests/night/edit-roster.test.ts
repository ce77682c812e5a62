import { describe, expect, it } from 'vitest';
import { machineSchema } from '@/lib/contract/machine';
import {
  withClass,
  withClassOf,
  withJoined,
  withoutClass,
  withoutRacer,
  withRacer,
} from '@/lib/night/edit-roster';
import { expectOk } from '@/lib/result/result';
import { racerOfRow, racersOfNight, repeatsOf, withNewRacers } from '@/lib/share/new-racers';
import { readRosterTable } from '@/lib/share/roster-table';
import { sharedNightSchema } from '@/lib/share/shared-night';
import { classOf, eventOfRacer, racerName } from '@/lib/store/racer-event';
import { type EventRecord, eventRecordSchema, machineRecordSchema } from '@/lib/store/records';

const run = (name: string, from: string) => ({
  name,
  start: `2027-01-16T${from}:00-06:00`,
  end: `2027-01-16T${from.slice(0, 2)}:50:00-06:00`,
  weight: 1,
});
const EARLY = [run('Heat 1', '18:40'), run('Heat 2', '19:40')];
const LATE = [run('Open 1', '20:10'), run('Open 2', '21:10'), run('Open 3', '22:10')];
const jets = (main: number) => ({ mains: [main], trim: null });

const empty: EventRecord = eventRecordSchema.parse({
  event: { name: 'Lake night', timezone: 'America/Chicago', elevationM: 402, runs: EARLY },
  machineIds: ['first'],
  typed: null,
});
const OPEN = { id: 'open', name: 'Open', runs: LATE };

const table = (text: string) =>
  expectOk(
    readRosterTable(text, { units: { temperature: 'C', pressure: 'hPa', elevation: 'm' }, elevationM: 402 }),
  ).rows;

/** Keys in the order they are asked for. */
function counting(): () => string {
  let count = 0;
  return () => {
    count += 1;
    return `new-${count}`;
  };
}

describe('a roster', () => {
  it('takes on newcomers and leaves alone who is on it', () => {
    const joined = withJoined(empty, [
      { machineId: 'second', name: 'Oda', classId: null },
      { machineId: 'first', name: 'Somebody else', classId: null },
    ]);
    expect(joined.machineIds).toEqual(['first', 'second']);
    expect(joined.club?.racers).toEqual({ second: { name: 'Oda', classId: null } });
    expect(eventRecordSchema.parse(joined)).toEqual(joined);
  });

  it('forgets with a racer all that was said about his night, and nobody else’s', () => {
    const told = {
      ...withJoined(empty, [{ machineId: 'second', name: 'Oda', classId: null }]),
      fitted: { first: jets(410), second: jets(400) },
      accepted: { second: [jets(400), jets(410)] },
      made: { first: [{ run: 0, setting: jets(410) }], second: [{ run: 0, setting: jets(400) }] },
    };
    const left = withoutRacer(told, 'second');
    expect(left).toMatchObject({
      machineIds: ['first'],
      fitted: { first: jets(410) },
      made: { first: [{ run: 0, setting: jets(410) }] },
    });
    expect(JSON.stringify(left)).not.toContain('second');
  });

  it('lets a class run at its own times', () => {
    const record = withClassOf(withClass(empty, OPEN, []), 'first', 'open');
    expect(eventOfRacer(record, 'first').runs).toEqual(LATE);
    expect(eventOfRacer(record, 'somebody').runs).toEqual(EARLY);
    expect(classOf(record, 'first')?.name).toBe('Open');
  });

  it('drops what was said about runs when a racer runs with others', () => {
    const told = {
      ...withClass(empty, OPEN, []),
      fitted: { first: jets(410) },
      accepted: { first: [jets(410), jets(420)] },
      made: { first: [{ run: 0, setting: jets(410) }] },
    };
    const moved = withClassOf(told, 'first', 'open');
    expect(moved.made.first).toEqual([]);
    expect(moved.accepted).toEqual({});
    // What is in the engine stays in the engine.
    expect(moved.fitted).toEqual({ first: jets(410) });
    expect(withClassOf(told, 'first', null)).toBe(told);
  });

  it('moves what was made along when a class gets a run before it', () => {
    const told = {
      ...withClassOf(withClass(empty, OPEN, []), 'first', 'open'),
      made: { first: [{ run: 1, setting: jets(420) }], other: [{ run: 1, setting: jets(400) }] },
    };
    const more = { ...OPEN, runs: [run('Open 0', '19:10'), ...LATE] };
    const edited = withClass(told, more, [null, 0, 1, 2]);
    expect(edited.made).toEqual({
      first: [{ run: 2, setting: jets(420) }],
      other: [{ run: 1, setting: jets(400) }],
    });
    expect(eventOfRacer(edited, 'first').runs[0]?.name).toBe('Open 0');
  });

  it('lets the racers of a class that is gone run with everybody', () => {
    const gone = withoutClass(withClassOf(withClass(empty, OPEN, []), 'first', 'open'), 'open');
    expect(eventOfRacer(gone, 'first').runs).toEqual(EARLY);
    expect(gone.club?.classes).toEqual([]);
  });
});

describe('newcomers', () => {
  it('of a pasted table come with machines of their own, and in classes by name', () => {
    const rows = table(
      'Ilsa;410;400 410;-10;402;Open\nOda;400;400 410;-9;402;open\nJuri;390;390 400;-8;402;',
    );
    const { machines, event } = withNewRacers(
      { machines: [], boxes: [], event: empty },
      rows.map(racerOfRow),
      counting(),
    );
    expect(machines.map(({ value }) => value.machine.name)).toEqual(['Ilsa', 'Oda', 'Juri']);
    expect(event.machineIds).toEqual(['first', ...machines.map(({ id }) => id)]);
    // One class for both spellings; until its times are set it runs when everybody does.
    expect(event.club?.classes.map(({ name, runs }) => [name, runs])).toEqual([['Open', EARLY]]);
    expect(machines.map(({ id }) => classOf(event, id)?.name ?? null)).toEqual(['Open', 'Open', null]);
    expect(eventRecordSchema.parse(event)).toEqual(event);
  });

  const namesOn = ({ machines, event }: ReturnType<typeof withNewRacers>) =>
    machines.map(({ id, value }) => racerName(event, id, value));

  it('of a stock class are as many racers as lines, though their machines are the same number for number', () => {
    const same = table(Array(3).fill('Twin 440;440;430 440 450;-10;402;Stock').join('\n'));
    const joined = withNewRacers({ machines: [], boxes: [], event: empty }, same.map(racerOfRow), counting());
    expect(joined.event.machineIds).toHaveLength(4);
    expect(namesOn(joined)).toEqual(['Twin 440', 'Twin 440 (2)', 'Twin 440 (3)']);
    // On the Machines page they stand without their event, so they are told apart there too.
    expect(joined.machines.map(({ value }) => value.machine.name)).toEqual(namesOn(joined));
    expect(eventRecordSchema.parse(joined.event)).toEqual(joined.event);
  });

  it('with names of their own stay apart on one kind of machine', () => {
    const stock = table(
      `name;machine;mains;box;temperature;elevation\n${['Ilsa', 'Oda', 'ilsa '].map((name) => `${name};Stock 440;440;430 440;-10;402`).join('\n')}`,
    );
    const joined = withNewRacers(
      { machines: [], boxes: [], event: empty },
      stock.map(racerOfRow),
      counting(),
    );
    expect(namesOn(joined)).toEqual(['Ilsa', 'Oda', 'ilsa (2)']);
    expect(new Set(joined.machines.map(({ value }) => value.machine.name))).toEqual(new Set(['Stock 440']));
  });

  const LINES = 'Twin 440;440;430 440;-10;402\nTwin 440;440;430 440;-10;402\nOda;400;400 410;-9;402';
  const pasted = (text = LINES) => table(text).map(racerOfRow);
  const first = withNewRacers({ machines: [], boxes: [], event: empty }, pasted(), counting());

  it('of a table that is pasted again are asked about, line for line, and only those that are there', () => {
    expect(repeatsOf({ machines: [], event: empty }, pasted())).toEqual([false, false, false]);
    expect(repeatsOf(first, pasted())).toEqual([true, true, true]);
    expect(repeatsOf(first, pasted(`${LINES}\nTwin 440;440;430 440;-10;402\nJuri;390;390;-8;402`))).toEqual([
      true,
      true,
      true,
      false,
      false,
    ]);
    const left = { ...first, event: withoutRacer(first.event, first.machines[1]!.id) };
    expect(repeatsOf(left, pasted())).toEqual([true, false, true]);
  });

  it('who join again as others are numbered on', () => {
    const keys = counting();
    const again = withNewRacers(first, pasted(), () => `again-${keys()}`);
    expect(namesOn(again)).toEqual(['Twin 440 (3)', 'Twin 440 (4)', 'Oda (2)']);
    expect(again.event.machineIds).toHaveLength(7);
  });

  it('of last event’s table take its machines along to the next event, each one once', () => {
    const next = withNewRacers({ machines: first.machines, boxes: [], event: empty }, pasted(), counting());
    expect(next.machines).toEqual([]);
    expect(next.event.machineIds).toEqual(['first', ...first.machines.map(({ id }) => id)]);
  });

  it('have names that a record takes, however long and however many', () => {
    const long = 'x'.repeat(80);
    const rows = table(Array(12).fill(`${long};440;430 440;-10;402`).join('\n'));
    const joined = withNewRacers({ machines: [], boxes: [], event: empty }, rows.map(racerOfRow), counting());
    expect(new Set(namesOn(joined)).size).toBe(12);
    expect(eventRecordSchema.parse(joined.event)).toEqual(joined.event);
    for (const { value } of joined.machines) expect(machineRecordSchema.parse(value)).toEqual(value);
  });

  const machine = machineSchema.parse({
    name: 'Ilsa Vorn’s triple',
    carburettors: [{ main: 410 }],
    box: [{ size: 410, count: 1 }],
    baseline: { air: { temperatureC: -10, elevationM: 402 } },
  });
  const shared = (runs: readonly unknown[]) =>
    sharedNightSchema.parse({
      event: { ...empty.event, runs },
      machines: [{ machine, fitted: jets(410), made: [{ run: 0, setting: jets(410) }] }],
      hours: [],
      sharedAt: '2027-01-16T18:00:00Z',
    });

  it('of a shared night run with everybody where the times are the same, however they are written', () => {
    const utc = EARLY.map((each) => ({
      ...each,
      name: 'R',
      start: new Date(each.start).toISOString(),
      end: new Date(each.end).toISOString(),
    }));
    const { event, machines } = withNewRacers(
      { machines: [], boxes: [], event: empty },
      racersOfNight(shared(utc)),
      counting(),
    );
    expect(classOf(event, machines[0]?.id ?? '')).toBeNull();
    expect(event.made[machines[0]?.id ?? '']).toEqual([{ run: 0, setting: jets(410) }]);
  });

  it('of a shared night bring other times along as a class, one for all who have the same', () => {
    const racers = [...racersOfNight(shared(LATE)), ...racersOfNight(shared(LATE))];
    const { event, machines } = withNewRacers({ machines: [], boxes: [], event: empty }, racers, counting());
    expect(event.club?.classes.map(({ runs }) => runs)).toEqual([LATE]);
    for (const { id } of machines) expect(eventOfRacer(event, id).runs).toEqual(LATE);
  });

  it('of a shared night are asked about where the same machine is on the roster, or was shared before them', () => {
    const racers = [...racersOfNight(shared(LATE)), ...racersOfNight(shared(EARLY))];
    expect(repeatsOf({ machines: [], event: empty }, racers)).toEqual([false, true]);
    const there = withNewRacers({ machines: [], boxes: [], event: empty }, racers, counting());
    expect(namesOn(there)).toEqual([machine.name, `${machine.name} (2)`]);
    expect(repeatsOf(there, racersOfNight(shared(EARLY)))).toEqual([true]);
    const called = withRacer(there.event, there.machines[0]!.id, { name: 'Ilsa' });
    expect(repeatsOf({ ...there, event: called }, racersOfNight(shared(EARLY)))).toEqual([true]);
  });

  it('never change a machine that is here: the same one is taken as it is, another comes in beside it', () => {
    const here = [
      { id: 'mine', value: machineRecordSchema.parse({ machine }) },
      { id: 'like', value: machineRecordSchema.parse({ machine: { ...machine, intakeOffsetC: 4 } }) },
    ];
    const same = withNewRacers(
      { machines: here, boxes: [], event: empty },
      racersOfNight(shared(EARLY)),
      counting(),
    );
    expect(same.machines).toEqual([]);
    expect(same.event.machineIds).toEqual(['first', 'mine']);
    const other = withNewRacers(
      { machines: here.slice(1), boxes: [], event: empty },
      racersOfNight(shared(EARLY)),
      counting(),
    );
    expect(other.machines.map(({ value }) => value.machine)).toEqual([machine]);
    expect(racerName(other.event, other.machines[0]!.id, other.machines[0]!.value)).toBe(machine.name);
  });
});
