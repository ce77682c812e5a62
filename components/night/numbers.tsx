'use client';

import { SetupSection } from '@/components/night/setup/setup-section';
import { AirTable } from '@/components/night/tables/air-table';
import { BoxTable } from '@/components/night/tables/box-table';
import { RunNumbers } from '@/components/night/tables/run-numbers';
import { SwapCountTable } from '@/components/night/tables/swap-count-table';
import type { Night } from '@/lib/night/night';
import type { Plan } from '@/lib/plan/types';
import type { Voice } from '@/lib/words/voice';

export type NumbersProps = {
  readonly night: Night;
  readonly plan: Plan;
  readonly voice: Voice;
  readonly carburettor: number;
};

/** What the night is made of, in figures, and the forms to change it: for whoever asks. */
export function Numbers({ night, plan, voice, carburettor }: NumbersProps) {
  const { machine, records } = night;
  return (
    <>
      <SetupSection event={records.event} machine={records.machine} />
      <SwapCountTable plan={plan} machineId={records.machine.id} />
      <RunNumbers plan={plan} />
      <BoxTable {...{ plan, machine, carburettor, voice }} />
      <AirTable plan={plan} voice={voice} />
    </>
  );
}
