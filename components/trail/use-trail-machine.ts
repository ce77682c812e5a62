'use client';

import { useMemo } from 'react';
import { usePreferences } from '@/components/store/use-preferences';
import { useTable } from '@/components/store/use-table';
import type { Machine } from '@/lib/carb/machine';
import { machineSchema } from '@/lib/contract/machine';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import type { ContractProblem } from '@/lib/contract/problem';
import { DEMO_TRAIL_MACHINE } from '@/lib/night/demo-trail-machine';
import type { Result } from '@/lib/result/result';
import { machineInForce } from '@/lib/store/machine-in-force';

export type MachineChoice = { readonly id: string; readonly name: string };

export type TrailMachine = {
  readonly id: string;
  readonly name: string;
  /** An invented machine, not one of the person's. */
  readonly invented: boolean;
  readonly machine: Result<Machine, readonly ContractProblem[]>;
  /** Height the baseline was proven at; null where it was not told. */
  readonly elevationM: number | null;
  readonly choices: readonly MachineChoice[];
};

/** Never a stored id: those are made by the app. */
export const INVENTED_ID = 'invented-trail';

const INVENTED = machineSchema.parse(DEMO_TRAIL_MACHINE);

/** The machine the page is about: the one chosen here, else the one chosen elsewhere, else an invented one. null: opening. */
export function useTrailMachine(chosenId: string): TrailMachine | null {
  const { preferences, known } = usePreferences();
  const machines = useTable('machines');
  const boxes = useTable('boxes');
  return useMemo(() => {
    if (!known || machines === null || boxes === null) return null;
    const own = machines.filter(({ id }) => !id.startsWith('demo-'));
    const elsewhere = own.find(({ id }) => id === preferences.machineId) ?? own[0];
    const wanted = [chosenId, elsewhere?.id];
    const id = wanted.find((each) => each === INVENTED_ID || machines.some((machine) => machine.id === each));
    const stored = machines.find((machine) => machine.id === id);
    const box = boxes.find((each) => each.id === stored?.value.boxId)?.value ?? null;
    const json = stored === undefined ? INVENTED : machineInForce(stored.value, box);
    return {
      id: stored?.id ?? INVENTED_ID,
      name: json.name,
      invented: stored === undefined,
      machine: machineFromJson(json),
      elevationM: json.baseline.air.elevationM ?? null,
      choices: [
        ...machines.map((machine) => ({ id: machine.id, name: machine.value.machine.name })),
        { id: INVENTED_ID, name: `${INVENTED.name} (invented)` },
      ],
    };
  }, [known, machines, boxes, chosenId, preferences.machineId]);
}
