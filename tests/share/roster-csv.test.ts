import { describe, expect, it } from 'vitest';
import { type MachineJson, machineSchema } from '@/lib/contract/machine';
import { withJoined, withRacer } from '@/lib/night/edit-roster';
import { expectOk } from '@/lib/result/result';
import { racerOfRow, withNewRacers } from '@/lib/share/new-racers';
import { rosterCsv } from '@/lib/share/roster-csv';
import { readRosterTable } from '@/lib/share/roster-table';
import { newMachineRecord } from '@/lib/store/new-machine-record';
import { boxRecordSchema, type EventRecord, eventRecordSchema } from '@/lib/store/records';
import { METRIC_UNITS, type UnitChoice } from '@/lib/units/choice';

const US: UnitChoice = { temperature: 'F', pressure: 'inHg', elevation: 'ft' };

/** Everything a machine can hold beside mains and box. */
const FULL = machineSchema.parse({
  name: '=Twin, "the old one"; blue',
  carburettors: [{ main: 162.5 }, { main: 160 }],
  jetMarking: { list: [160, 162.5, 165].map((size, i) => ({ size, area: 1 + i / 10 })) },
  box: [
    { size: 160, count: 2 },
    { size: 162.5, count: 2 },
    { size: 165, count: 1 },
  ],
  baseline: {
    air: { temperatureC: -10.5, altimeterHpa: 1018.3, elevationM: 402.3, relativeHumidity: 0.72 },
    judged: 'size-rich',
    provenOn: '2026-01-16',
  },
  trim: { lowest: 1, highest: 4, baseline: 2, percentPerPosition: 1.6 },
  pilot: { jet: 55, jets: [52.5, 55], screw: 'air', turns: 1.5 },
  needle: { groove: 3, grooves: 5 },
  limits: { leanPercent: 1.5, richPercent: 6, risk: 0.1 },
  intakeOffsetC: 4,
});
const PLAIN = machineSchema.parse({
  name: 'Pike 700',
  carburettors: [{ main: 420 }],
  jetMarking: 'bore',
  box: [{ size: 410, count: 1 }],
  baseline: { air: { temperatureC: -7.8, pressureHpa: 985.4 } },
});
const BARE = machineSchema.parse({ ...PLAIN, name: 'ילד 9', box: [] });

const RUNS = [{ name: 'Round 1', start: '2027-01-17T00:00:00Z', end: '2027-01-17T00:10:00Z' }];
const EMPTY = eventRecordSchema.parse({
  event: { name: 'Lake', timezone: 'UTC', elevationM: 402, runs: RUNS },
  machineIds: [],
  typed: null,
});
const MACHINES: Readonly<Record<string, MachineJson>> = { full: FULL, plain: PLAIN, bare: BARE };
const TRAILER = boxRecordSchema.parse({ name: 'Trailer; A', entries: [{ size: 160, count: 7 }] });

function club() {
  const joined = withJoined(
    EMPTY,
    Object.keys(MACHINES).map((machineId) => ({ machineId, name: '', classId: null })),
  );
  const event = withRacer(withRacer(joined, 'full', { name: '+Ilsa', bib: '7A' }), 'plain', { bib: '014' });
  const stored = <V>(id: string, value: V) => ({ id, revision: 1, updatedAt: '', value });
  return {
    event: stored('event', event as EventRecord),
    machines: Object.entries(MACHINES).map(([id, machine]) =>
      stored(id, { ...newMachineRecord(machine), boxId: id === 'full' ? 'trailer' : null }),
    ),
    boxes: [stored('trailer', TRAILER)],
    forecast: null,
    log: [],
  };
}

/** What comes in again, from nothing. */
function comeIn(text: string, units: UnitChoice) {
  const table = expectOk(readRosterTable(text, { units, elevationM: 0 }));
  expect(table.bad).toEqual([]);
  expect(table.ignored).toEqual([]);
  let key = 0;
  return withNewRacers({ machines: [], boxes: [], event: EMPTY }, table.rows.map(racerOfRow), () => {
    key += 1;
    return `new-${key}`;
  });
}

describe('a roster that goes out as a file', () => {
  for (const units of [US, METRIC_UNITS])
    it(`comes in unchanged where the reader counts in °${units.temperature}`, () => {
      const { machines, boxes, event } = comeIn(rosterCsv(club()), units);
      expect(machines.map(({ value }) => value.machine)).toEqual([
        { ...FULL, box: TRAILER.entries },
        PLAIN,
        BARE,
      ]);
      expect(boxes.map(({ value }) => value)).toEqual([TRAILER]);
      expect(machines.map(({ value }) => value.boxId)).toEqual([boxes[0]?.id, null, null]);
      expect(machines.map(({ id }) => event.club?.racers[id])).toEqual([
        { name: '+Ilsa', bib: '7A', classId: null },
        { name: '', bib: '014', classId: null },
        { name: '', classId: null },
      ]);
    });

  it('is the same file once it has come in and goes out again', () => {
    const text = rosterCsv(club());
    const { machines, boxes, event } = comeIn(text, US);
    const stored = <V>({ id, value }: { readonly id: string; readonly value: V }) => ({
      id,
      revision: 1,
      updatedAt: '',
      value,
    });
    const again = rosterCsv({
      event: stored({ id: 'event', value: event }),
      machines: machines.map(stored),
      boxes: boxes.map(stored),
      forecast: null,
      log: [],
    });
    expect(again).toBe(text);
  });

  it('says so where its details were changed beyond reading', () => {
    const [heads, first] = rosterCsv(club()).split('\r\n');
    const broken = `${heads}\r\n${first?.replace('""trim""', '""trim')}`;
    const { bad } = expectOk(readRosterTable(broken, { units: US, elevationM: 0 }));
    expect(bad.map(({ problem }) => problem.code)).toEqual(['details']);
  });
});

describe('a box that several share', () => {
  const LINES = [
    'Bib;Racer;Mains;Box;Shared box;Temp (C)',
    '1;Ilsa;410;400x3 410x3;Trailer A;-10',
    '2;Juri;410;400x3 410x2 420;trailer a;-10',
    '3;Oda;410;400x3;;-10',
  ].join('\n');

  it('holds each jet once, however many lines tell of it', () => {
    const { boxes, machines } = comeIn(LINES, METRIC_UNITS);
    expect(boxes.map(({ value }) => value)).toEqual([
      {
        name: 'Trailer A',
        entries: [
          { size: 400, count: 3 },
          { size: 410, count: 3 },
          { size: 420, count: 1 },
        ],
      },
    ]);
    expect(machines.map(({ value }) => value.boxId)).toEqual([boxes[0]?.id, boxes[0]?.id, null]);
  });

  it('counts no jet twice where the table is pasted a second time', () => {
    const once = comeIn(LINES, METRIC_UNITS);
    const rows = expectOk(readRosterTable(LINES, { units: METRIC_UNITS, elevationM: 0 })).rows;
    const keys = rows.map(({ line }) => `again-${line}`);
    const twice = withNewRacers(once, rows.map(racerOfRow), () => keys.pop() ?? '');
    expect(twice.boxes).toEqual([]);
    const ids = new Set([...once.machines, ...twice.machines].map(({ value }) => value.boxId));
    expect([...ids]).toEqual([once.boxes[0]?.id, null]);
  });
});
