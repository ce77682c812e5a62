import { describe, expect, it } from 'vitest';
import { boardPatchSchema, boardPostSchema } from '@/lib/contract/board';
import { withFitted, withMachineAsBefore, withRunsMoved } from '@/lib/night/records';
import { boardLacks, boardMark, boardPatchOf, boardPostOf } from '@/lib/share/board-post';
import { heardOnBoard } from '@/lib/share/board-said';
import { demoRecords, BEFORE_THE_FIRST_RUN as NOW } from '../night/night-case';

const RECORDS = demoRecords(NOW);
const { id } = RECORDS.machine;
const at = (value: typeof RECORDS.event.value) => [{ ...RECORDS, event: { ...RECORDS.event, value } }];
const post = (value = RECORDS.event.value) => boardPostOf(at(value), NOW)!;
const SETTING = { mains: [420, 410, 420], trim: null };

describe('a night as it is posted', () => {
  it('is one that a board takes, with its typed hours and the runs of a class of its own', () => {
    const { event } = RECORDS;
    const own = event.value.event.runs.slice(0, 2);
    const club = {
      classes: [{ id: 'c', name: 'Open', runs: own }],
      racers: { [id]: { name: 'Ilsa', classId: 'c' } },
    };
    const night = boardPostSchema.parse(post({ ...event.value, club }));
    expect(night.machines).toMatchObject([{ id, name: 'Ilsa', runs: own }]);
    expect(night.hoursTyped).toBe(true);
    expect(night.hours.length).toBeGreaterThan(5);
  });

  it('is nothing without a machine, or without hours and place', () => {
    expect(boardPostOf([], NOW)).toBeNull();
    const { place: _, ...nowhere } = RECORDS.event.value.event;
    expect(boardPostOf(at({ ...RECORDS.event.value, event: nowhere, typed: null }), NOW)).toBeNull();
  });

  it('is changed by another time, and compared one by one in what is said at its machines', () => {
    const { value } = RECORDS.event;
    const late = withRunsMoved(value, { machineId: id, runs: [0, 1], minutes: 20 });
    const fitted = withFitted(value, id, { at: NOW, setting: SETTING });
    expect(boardMark(post(late))).not.toBe(boardMark(post()));
    expect(boardMark(post(fitted))).toBe(boardMark(post()));
    expect(post(fitted).machines[0]?.fittings).toMatchObject([{ setting: SETTING }]);
    const patch = boardPatchSchema.parse(boardPatchOf(post(fitted), fitted, {}));
    expect(patch.machines?.[0]?.fittings).toMatchObject([{ setting: SETTING }]);
    expect(patch.event?.runs).toEqual(value.event.runs);
  });

  it('lacks nothing on its board until something is changed, said or taken back', () => {
    const { value } = RECORDS.event;
    const secrets = { id: 'b', keepSecret: 'k', followSecret: 'f' };
    const sent = { ...value, board: { ...secrets, sent: boardMark(post()), heard: heardOnBoard(value) } };
    const lacks = (record: typeof value) => boardLacks(at(record), NOW);
    expect(lacks(value)).toBe(false);
    expect(lacks(sent)).toBe(false);
    expect(lacks(withRunsMoved(sent, { machineId: id, runs: [0], minutes: 5 }))).toBe(true);
    const said = withFitted(sent, id, { at: NOW, setting: SETTING });
    expect(lacks(said)).toBe(true);
    const heard = { ...said, board: { ...sent.board, heard: heardOnBoard(said) } };
    expect(lacks(heard)).toBe(false);
    expect(lacks(withMachineAsBefore(heard, id, sent))).toBe(true);
  });
});
