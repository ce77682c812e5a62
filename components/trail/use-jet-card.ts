'use client';

import { useEffect, useState } from 'react';
import type { Machine } from '@/lib/carb/machine';
import type { PlanProblem } from '@/lib/plan/types';
import { askedFor, type CardAxes, type CardCell, cardRow, type JetCard } from '@/lib/trail/card';

/** A card is that of one machine: it does not stand in for another's while that is worked out. */
export type CardState =
  | { readonly status: 'working' }
  | { readonly status: 'problem'; readonly problem: PlanProblem }
  | { readonly status: 'ready'; readonly card: JetCard };

const breath = () => new Promise((resolve) => setTimeout(resolve, 0));

/** The card, worked out line by line so that the page stays quick under the fingers. */
export function useJetCard(machine: Machine, axes: CardAxes | null): CardState {
  const [worked, setWorked] = useState<{ readonly machine: Machine; readonly state: CardState } | null>(null);
  useEffect(() => {
    if (axes === null) return;
    let stopped = false;
    const done = (state: CardState): void => setWorked({ machine, state });
    async function work(wanted: CardAxes) {
      const asked = askedFor(machine);
      const rows: (readonly CardCell[])[] = [];
      for (const temperature of wanted.temperatures) {
        await breath();
        if (stopped) return;
        const row = cardRow(asked, wanted, temperature);
        if (!row.ok) return done({ status: 'problem', problem: row.reason });
        rows.push(row.value);
      }
      done({ status: 'ready', card: { axes: wanted, rows } });
    }
    void work(axes);
    return () => {
      stopped = true;
    };
  }, [machine, axes]);
  return worked?.machine === machine ? worked.state : { status: 'working' };
}
