import { describe, expect, it } from 'vitest';
import { withFitted, withMachineAsBefore } from '@/lib/night/records';
import {
  boardNews,
  heardOnBoard,
  saidForBoard,
  saysMoreThanBoard,
  withBoardNews,
} from '@/lib/share/board-said';
import type { EventRecord } from '@/lib/store/records';
import { addMinutes } from '@/lib/time/instant';
import { isoLocal, isoUtc } from '@/lib/time/zone';
import { demoRecords, BEFORE_THE_FIRST_RUN as NOW } from '../night/night-case';

const { event, machine } = demoRecords(NOW);
const { id } = machine;
const setting = (main: number) => ({ mains: [main, main, main], trim: null });
const at = (minutes: number) => isoUtc(addMinutes(NOW, minutes));
const said = (minutes: number, main: number) => ({ at: at(minutes), setting: setting(main) });
const fit = (record: EventRecord, minutes: number, main: number) =>
  withFitted(record, id, { at: addMinutes(NOW, minutes), setting: setting(main) });

const board = { id: 'b', keepSecret: 'k', followSecret: 'f', sent: 's' };
/** Posted after one jet was said to be in. */
const before = fit({ ...event.value, fitted: {}, fittings: {} }, 0, 400);
const POSTED: EventRecord = { ...before, board: { ...board, heard: heardOnBoard(before) } };
const mainNow = (record: EventRecord) => record.fitted[id]?.mains[0];

describe('what is said on a board and in the night it was posted from', () => {
  it('is the same to begin with', () => {
    const there = { [id]: [said(0, 400)] };
    expect(boardNews(POSTED, there)).toEqual({});
    expect(withBoardNews(POSTED, there)).toBe(POSTED);
    expect(saysMoreThanBoard(POSTED)).toBe(false);
  });

  it('comes into the night once, and is not said back', () => {
    const there = { [id]: [said(0, 400), said(5, 410)] };
    const heard = withBoardNews(POSTED, there);
    expect(mainNow(heard)).toBe(410);
    expect(heard.fittings?.[id]).toEqual([said(0, 400), said(5, 410)]);
    expect(withBoardNews(heard, there)).toBe(heard);
    expect(saysMoreThanBoard(heard)).toBe(false);
    // The same moment on another clock is no news.
    const local = { [id]: [{ ...said(5, 410), at: isoLocal(addMinutes(NOW, 5), 'America/Chicago') }] };
    expect(boardNews(heard, local)).toEqual({});
  });

  it('never goes over what was said here since', () => {
    const here = fit(POSTED, 10, 420);
    const heard = withBoardNews(here, { [id]: [said(0, 400), said(5, 410)] });
    expect(mainNow(heard)).toBe(420);
    expect(heard.fittings?.[id]).toEqual([said(0, 400), said(5, 410), said(10, 420)]);
    // And goes over what was said here before.
    expect(mainNow(withBoardNews(here, { [id]: [said(0, 400), said(11, 430)] }))).toBe(430);
  });

  it('is taken back on the board too, and does not come again', () => {
    const there = { [id]: [said(0, 400), said(5, 410)] };
    const heard = withBoardNews(POSTED, there);
    const undone = withMachineAsBefore(heard, id, POSTED);
    expect(mainNow(undone)).toBe(400);
    expect(withBoardNews(undone, there)).toBe(undone);
    expect(saysMoreThanBoard(undone)).toBe(true);
    expect(saidForBoard(undone, there, id)).toEqual([said(0, 400)]);
  });

  it('goes from here to the board, beside what was said there meanwhile', () => {
    const here = fit(POSTED, 10, 420);
    expect(saysMoreThanBoard(here)).toBe(true);
    expect(saidForBoard(here, { [id]: [said(0, 400), said(5, 410)] }, id)).toEqual([
      said(0, 400),
      said(5, 410),
      said(10, 420),
    ]);
  });

  it('leaves alone a machine that is not in the night, and a night whose times were never kept', () => {
    expect(boardNews(POSTED, { stranger: [said(5, 410)] })).toEqual({});
    const { fittings: _, ...timeless } = { ...POSTED, fitted: { [id]: setting(400) } };
    expect(boardNews(timeless, { [id]: [said(3, 400)] })).toEqual({});
    expect(saidForBoard(timeless, { [id]: [said(3, 400)] }, id)).toEqual([said(3, 400)]);
    expect(mainNow(withBoardNews(timeless, { [id]: [said(3, 400), said(5, 410)] }))).toBe(410);
  });
});
