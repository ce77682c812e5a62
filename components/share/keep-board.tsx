'use client';

import { useEffect } from 'react';
import type { NightRecords } from '@/lib/night/night';
import { boardMark, boardPostOf } from '@/lib/share/board-post';
import { instant } from '@/lib/time/instant';
import { usePosting } from './use-posting';

/** A finger that types goes on; what it ends with is sent once. */
const REST_MS = 2000;

/** Sends what changes on a posted night to its board, while its page is open. Shows nothing. */
export function KeepBoard({ nights }: { readonly nights: readonly NightRecords[] }) {
  const { sendChanges, busy, problem } = usePosting(nights);
  const board = nights[0]?.event.value.board;
  useEffect(() => {
    // After a refusal the page that posts it says so, and the button there tries again.
    if (board === undefined || busy || problem !== null) return;
    const night = boardPostOf(nights, instant(Date.now()));
    if (night === null || boardMark(night) === board.sent) return;
    const timer = setTimeout(() => void sendChanges(board, night), REST_MS);
    return () => clearTimeout(timer);
  }, [nights, board, busy, problem, sendChanges]);
  return null;
}
