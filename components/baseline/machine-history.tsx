'use client';

import { useMemo } from 'react';
import { deviceZone } from '@/components/event/zones';
import { HardwareSection } from '@/components/hardware/hardware-section';
import { LearnSection } from '@/components/learn/learn-section';
import { useNow } from '@/components/store/use-now';
import { useTable } from '@/components/store/use-table';
import type { MachineRecord, Stored } from '@/lib/store/records';
import { localDate } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { BaselineSection } from './baseline-section';

type MachineHistoryProps = { readonly stored: Stored<MachineRecord>; readonly units: UnitChoice };

/** What happened to a machine: its baselines, its parts, and what its chart and log teach. */
export function MachineHistory({ stored, units }: MachineHistoryProps) {
  const all = useTable('log');
  const now = useNow();
  const log = useMemo(
    () => (all ?? []).filter(({ value }) => value.machineId === stored.id),
    [all, stored.id],
  );
  if (all === null || now === null) return <p>Opening its history…</p>;
  const today = localDate(now, deviceZone());
  const parts = { stored, log, units, today };
  return (
    <>
      <BaselineSection {...parts} />
      <HardwareSection {...parts} />
      <LearnSection {...parts} />
    </>
  );
}
