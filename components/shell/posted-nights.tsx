'use client';

import dynamic from 'next/dynamic';
import { useTable } from '@/components/store/use-table';

/** What speaks to boards comes only where a night is posted to one. */
const KeepBoards = dynamic(
  () => import('@/components/board/keep-boards').then((module) => module.KeepBoards),
  {
    ssr: false,
  },
);

/** A posted night and its board are kept alike on every page. */
export function PostedNights() {
  const events = useTable('events');
  return events?.some(({ value }) => value.board !== undefined) === true ? <KeepBoards /> : null;
}
