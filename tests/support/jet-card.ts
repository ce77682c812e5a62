import type { Machine } from '@/lib/carb/machine';
import type { PlanProblem } from '@/lib/plan/types';
import { ok, type Result } from '@/lib/result/result';
import { askedFor, type CardAxes, type CardCell, cardRow, type JetCard } from '@/lib/trail/card';

/** Every line of the card in one go, as no page may ask for it. */
export function jetCard(machine: Machine, axes: CardAxes): Result<JetCard, PlanProblem> {
  const rows: (readonly CardCell[])[] = [];
  const asked = askedFor(machine);
  for (const temperature of axes.temperatures) {
    const row = cardRow(asked, axes, temperature);
    if (!row.ok) return row;
    rows.push(row.value);
  }
  return ok({ axes, rows });
}
