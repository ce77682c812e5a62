'use client';

import { useEffect, useRef, useState } from 'react';
import { usePosting } from '@/components/share/use-posting';
import { useWrite } from '@/components/store/use-write';
import { Notice } from '@/components/ui/notice';
import type { NightRecords } from '@/lib/night/night';
import { machinePart, withMachineAsBefore } from '@/lib/night/records';
import type { BoardDoorway } from '@/lib/share/board-address';
import { boardLacks } from '@/lib/share/board-post';
import { boardNews, saidOnBoard, withBoardNews } from '@/lib/share/board-said';
import { racerName } from '@/lib/store/racer-event';
import type { EventRecord } from '@/lib/store/records';
import { instant } from '@/lib/time/instant';
import { newsSentence, notSentSentence } from '@/lib/words/board-keeping';
import { type BoardView, useBoard } from './use-board';

/** A finger that types goes on; what it ends with is sent once. */
const REST_MS = 2000;
/** After a refusal, or without a signal. */
const AGAIN_MS = 30_000;

type KeepBoardProps = { readonly nights: readonly NightRecords[]; readonly door: BoardDoorway };

/** Keeps a posted night and its board alike, whatever page is open; says so only while something has not gone out. */
export function KeepBoard({ nights, door }: KeepBoardProps) {
  const posting = usePosting(nights);
  const view = useBoard(door);
  useHearing(nights, view);
  const problem = useSending(nights, posting);
  const { forget } = posting;
  const gone = view.gone !== null;
  useEffect(() => {
    if (gone) forget();
  }, [gone, forget]);
  const name = nights[0]?.event.value.event.name ?? '';
  return problem === null ? null : <Notice tone="caution" title={notSentSentence(name, problem)} />;
}

/** Sends what was changed or said here; gives back why it has not gone out, where it has not. */
function useSending(
  nights: readonly NightRecords[],
  { sendChanges, busy, problem }: ReturnType<typeof usePosting>,
): string | null {
  const board = nights[0]?.event.value.board;
  const [lacks, setLacks] = useState(false);
  useEffect(() => {
    const more = board !== undefined && boardLacks(nights, instant(Date.now()));
    setLacks(more);
    if (!more || busy) return;
    const timer = setTimeout(() => void sendChanges(board), problem === null ? REST_MS : AGAIN_MS);
    return () => clearTimeout(timer);
  }, [nights, board, busy, problem, sendChanges]);
  return lacks ? problem : null;
}

/** Writes what people said at their machines into the night: once, with a way back. */
function useHearing(nights: readonly NightRecords[], { board }: BoardView): void {
  const write = useWrite();
  const writing = useRef(false);
  const event = nights[0]?.event;
  useEffect(() => {
    if (event === undefined || board === null || writing.current) return;
    const said = saidOnBoard(board);
    const news = boardNews(event.value, said);
    const ids = Object.keys(news);
    if (ids.length === 0) return;
    writing.current = true;
    const nameOf = (id: string): string => {
      const machine = nights.find((night) => night.machine.id === id)?.machine;
      return machine === undefined ? id : racerName(event.value, id, machine.value);
    };
    void write
      .change(
        { table: 'events', id: event.id },
        (record) => withBoardNews(record, said),
        newsSentence(news, nameOf),
        {
          part: (record: EventRecord) => ids.map((id) => machinePart(record, id)),
          back: (record: EventRecord, before: EventRecord) =>
            ids.reduce((back, id) => withMachineAsBefore(back, id, before), record),
        },
      )
      .finally(() => {
        writing.current = false;
      });
  }, [event, board, write, nights]);
}
