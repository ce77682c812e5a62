'use client';

import { useMemo } from 'react';
import { useTable } from '@/components/store/use-table';
import { clubRecordsOf, nightsOf } from '@/lib/night/club';
import { KeepBoard } from './keep-board';

/** Every night that this browser has posted, kept like its board. */
export function KeepBoards() {
  const events = useTable('events');
  const machines = useTable('machines');
  const boxes = useTable('boxes');
  const forecasts = useTable('forecasts');
  const log = useTable('log');
  const posted = useMemo(() => {
    if (events === null || machines === null || boxes === null || forecasts === null || log === null)
      return [];
    const tables = { events, machines, boxes, forecasts, log };
    return events.flatMap((event) => {
      const { board } = event.value;
      if (board === undefined) return [];
      const { id, keepSecret, followSecret } = board;
      const door = { id, secret: keepSecret, followSecret, keeps: true, machine: null };
      return [{ door, nights: nightsOf(clubRecordsOf(event, tables)) }];
    });
  }, [events, machines, boxes, forecasts, log]);
  return posted.map(({ door, nights }) => <KeepBoard key={door.id} door={door} nights={nights} />);
}
