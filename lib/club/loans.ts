import { normaliseBox } from '@/lib/carb/box';
import type { Box, Machine } from '@/lib/carb/machine';
import type { Plan, PlanProblem } from '@/lib/plan/types';
import type { Result } from '@/lib/result/result';
import { type ClubBox, mostAtOnce, type Pieces, spareIn } from './boxes';
import { type ClubRacer, markingKey, type PlannedRacer } from './racer';
import { type Want, wantsOf } from './wants';

/** Pieces that one box can give to a racer. */
export type Loan = { readonly fromBox: string; readonly size: number; readonly count: number };

/** How a want can be met from the spare jets of others. */
export type Borrowing = {
  readonly want: Want;
  /** Empty where nobody has anything to spare that helps. */
  readonly loans: readonly Loan[];
  /** Runs that stay outside the limit even with the loans, by the plan with them. */
  readonly left: readonly number[];
};

/** Plans a racer with another box. */
export type PlanWithBox = (racer: ClubRacer, box: Box) => Result<Plan, PlanProblem>;

/** More sizes than this about the wanted one would only be richer still. */
const SIZES_TRIED = 5;
/** Another's series may hold a jet between two of the asker's; whether it does is for the plan with it to say. */
const SERIES_APART = 0.03;

/**
 * Meets the wants one after the other from what owners do not need themselves; what is lent once is not lent again.
 * Every loan has been planned with: it is named only where it leaves fewer runs outside the limit. Yields after each
 * want, so that whoever drives it can let others work in between.
 */
export function* borrowings(
  planned: readonly PlannedRacer[],
  boxes: readonly ClubBox[],
  planWith: PlanWithBox,
): Generator<void, readonly Borrowing[]> {
  const racers = new Map(planned.map((each) => [each.racer.id, each]));
  const stock = boxes.map(({ boxId, marking, ...box }) => ({
    boxId,
    marking,
    left: new Map(spareIn({ boxId, marking, ...box })),
  }));
  const met: Borrowing[] = [];
  for (const want of wantsOf(planned)) {
    const asker = racers.get(want.racerId)!;
    const lenders = stock.filter(
      ({ boxId, marking }) => boxId !== asker.racer.boxId && marking === markingKey(asker.racer.machine),
    );
    met.push(meet(want, asker, { lenders, planWith }));
    yield;
  }
  return met;
}

type Lender = { readonly boxId: string; readonly left: Map<number, number> };

function meet(
  want: Want,
  { racer, plan }: PlannedRacer,
  { lenders, planWith }: { readonly lenders: readonly Lender[]; readonly planWith: PlanWithBox },
): Borrowing {
  const none: Borrowing = { want, loans: [], left: want.runs };
  const offered = offeredFor(want, racer.machine, lenders);
  if (offered.length === 0) return none;
  const fresh = planWith(racer, normaliseBox([...racer.machine.box, ...offered]));
  if (!fresh.ok) return none;
  const left = outside(fresh.value, want.runs);
  if (left.length >= outside(plan, want.runs).length) return none;
  return { want, loans: take(missing(fresh.value, racer.machine), lenders), left };
}

/** Spare sizes that are safe, the smallest first, no more of one than there are carburettors. */
function offeredFor({ least }: Want, machine: Machine, lenders: readonly Lender[]): Box {
  const total = new Map<number, number>();
  for (const { left } of lenders)
    for (const [size, count] of left) total.set(size, (total.get(size) ?? 0) + count);
  return [...total]
    .filter(([size, count]) => count > 0 && size >= least * (1 - SERIES_APART))
    .sort(([a], [b]) => a - b)
    .slice(0, SIZES_TRIED + spread(machine))
    .map(([size, count]) => ({ size, count: Math.min(count, machine.carburettors.length) }));
}

/** Staggered jets want as many more sizes as there are different ones. */
const spread = ({ carburettors }: Machine): number => new Set(carburettors.map(({ main }) => main)).size - 1;

/** Of the wanting runs those that are outside a limit, on either side: a jet beyond the rich limit is no help. */
function outside(plan: Plan, runs: readonly number[]): readonly number[] {
  return runs.filter((run) => plan.runs[run]?.grade !== 'good');
}

/** What a plan puts in beyond what the machine's own box holds. */
function missing(plan: Plan, { box }: Machine): Pieces {
  const owned = new Map(normaliseBox(box).map(({ size, count }) => [size, count]));
  const planned = plan.runs.filter(({ state }) => state === 'planned').map(({ setting }) => setting);
  return new Map(
    [...mostAtOnce(planned)]
      .map(([size, count]) => [size, count - (owned.get(size) ?? 0)] as const)
      .filter(([, count]) => count > 0),
  );
}

/** Takes the pieces from as few lenders as can be, and out of what they have left. */
function take(wanted: Pieces, lenders: readonly Lender[]): readonly Loan[] {
  return [...wanted].flatMap(([size, count]) => {
    const loans: Loan[] = [];
    let open = count;
    const most = [...lenders].sort((a, b) => (b.left.get(size) ?? 0) - (a.left.get(size) ?? 0));
    for (const { boxId, left } of most) {
      const given = Math.min(open, left.get(size) ?? 0);
      if (given === 0) continue;
      loans.push({ fromBox: boxId, size, count: given });
      left.set(size, (left.get(size) ?? 0) - given);
      open -= given;
    }
    return loans;
  });
}
