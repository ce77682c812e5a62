import { fail, ok, type Result } from '@/lib/result/result';
import { type Ratio, ratio } from '@/lib/units/quantity';
import { logFuelShift, PUMP_ETHANOL_SHARE } from './fuel-mixture';
import { addShifts } from './judged';
import type { BaselineShift } from './machine';
import { USUAL_LOG_STEP } from './size-step';

export type HardwareKind =
  | 'bored'
  | 'airbox-off'
  | 'airbox-on'
  | 'open-filters'
  | 'pipe'
  | 'big-bore'
  | 'compression'
  | 'fuel';

/**
 * A part changed since the baseline. `amount`: millimetres for `bored`, percent of displacement for `big-bore`, share of
 * ethanol by volume (0 to 1) for `fuel`; null elsewhere, and for a race fuel without ethanol share.
 */
export type HardwareChange = { readonly kind: HardwareKind; readonly amount: number | null };

/** Where a shift comes from: `stoichiometry` and `elementary-carburettor` are derived in the README; the rest is practice. */
export type ShiftSource = 'stoichiometry' | 'elementary-carburettor' | 'common practice, no source';

/** What to look at beside the main. */
export type HardwareCaution =
  | 'less-cutaway-if-bottom-lean'
  | 'seems-a-gain-if-it-was-rich'
  | 'less-detonation-margin'
  | 'check-pilot-and-needle'
  | 'fuel-parts-must-bear-ethanol';

export type HardwareShift = BaselineShift & {
  readonly kind: HardwareKind;
  readonly source: ShiftSource;
  /** Every one of these asks for plugs to be read again; the shift is a starting point. */
  readonly reprove: true;
  readonly cautions: readonly HardwareCaution[];
};

export type HardwareProblem =
  | { readonly code: 'amount-missing'; readonly kind: HardwareKind }
  | {
      readonly code: 'amount-out-of-range';
      readonly kind: HardwareKind;
      readonly amount: number;
      readonly most: number;
    };

/** Largest amount that still is a change and not a typing slip, for the kinds that ask for one. */
const MOST_AMOUNT = { bored: 10, 'big-bore': 60, fuel: 1 } as const;

const PRACTICE = 'common practice, no source';

/**
 * Shift of the right main for one change, as ln of area, with its sd.
 *
 * bored: one size up per millimetre. airbox-off: two sizes up (it passes air more freely), airbox-on: two down;
 * open-filters: two up; pipe: one up. All four are common practice, no source, and as wide as they are uncertain.
 * big-bore and compression: no shift, since the venturi draws fuel in step with the air; only less is certain.
 */
export function hardwareShift(
  change: HardwareChange,
  ethanolShareBefore: Ratio = PUMP_ETHANOL_SHARE,
): Result<HardwareShift, HardwareProblem> {
  const amount = checkedAmount(change);
  return amount.ok
    ? ok({ kind: change.kind, reprove: true, ...shiftOf(change.kind, amount.value, ethanolShareBefore) })
    : amount;
}

function checkedAmount({ kind, amount }: HardwareChange): Result<number | null, HardwareProblem> {
  if (kind !== 'bored' && kind !== 'big-bore' && kind !== 'fuel') return ok(null);
  if (amount === null) return kind === 'fuel' ? ok(null) : fail({ code: 'amount-missing', kind });
  const most = MOST_AMOUNT[kind];
  if (!(amount >= 0 && amount <= most)) return fail({ code: 'amount-out-of-range', kind, amount, most });
  return ok(amount);
}

type ShiftFacts = Omit<HardwareShift, 'kind' | 'reprove'>;

function shiftOf(kind: HardwareKind, amount: number | null, ethanolShareBefore: Ratio): ShiftFacts {
  const sizes = (count: number, sd: number, cautions: readonly HardwareCaution[]): ShiftFacts => ({
    log: count * USUAL_LOG_STEP,
    sd: sd * USUAL_LOG_STEP,
    source: PRACTICE,
    cautions,
  });
  switch (kind) {
    case 'bored':
      return sizes(amount ?? 0, 0.75 * (amount ?? 0), ['less-cutaway-if-bottom-lean']);
    case 'airbox-off':
      return sizes(2, 1.5, ['seems-a-gain-if-it-was-rich', 'check-pilot-and-needle']);
    case 'airbox-on':
      return sizes(-2, 1.5, ['check-pilot-and-needle']);
    case 'open-filters':
      return sizes(2, 1.5, ['seems-a-gain-if-it-was-rich', 'check-pilot-and-needle']);
    case 'pipe':
      return sizes(1, 1.5, ['check-pilot-and-needle']);
    case 'big-bore':
      return {
        log: 0,
        sd: USUAL_LOG_STEP * (1 + (amount ?? 0) / 20),
        source: 'elementary-carburettor',
        cautions: ['check-pilot-and-needle'],
      };
    case 'compression':
      return {
        log: 0,
        sd: USUAL_LOG_STEP / 2,
        source: 'elementary-carburettor',
        cautions: ['less-detonation-margin'],
      };
    case 'fuel':
      return fuelShift(amount, ethanolShareBefore);
  }
}

function fuelShift(ethanolShare: number | null, ethanolShareBefore: Ratio): ShiftFacts {
  // A race fuel's make-up is not on its label: no shift is claimed, only doubt of one and a half sizes.
  if (ethanolShare === null)
    return { log: 0, sd: 1.5 * USUAL_LOG_STEP, source: PRACTICE, cautions: ['less-detonation-margin'] };
  const log = logFuelShift({ from: ethanolShareBefore, to: ratio(ethanolShare) });
  // Viscosity and evaporation are not in the sum: a tenth of the shift, and a quarter of a size, stay open.
  const sd = Math.hypot(log / 10, USUAL_LOG_STEP / 4);
  const cautions: readonly HardwareCaution[] =
    ethanolShare > 0.15
      ? ['check-pilot-and-needle', 'fuel-parts-must-bear-ethanol']
      : ['check-pilot-and-needle'];
  return { log, sd, source: 'stoichiometry', cautions };
}

/**
 * All changes since the baseline in the order made: the shifts added up, a fuel counted from the fuel before it.
 * An unknown race fuel leaves the share counted from unchanged.
 */
export function hardwareShifts(
  changes: readonly HardwareChange[],
  ethanolShareAtBaseline: Ratio = PUMP_ETHANOL_SHARE,
): Result<{ readonly each: readonly HardwareShift[]; readonly total: BaselineShift }, HardwareProblem> {
  const each: HardwareShift[] = [];
  let ethanolShare = ethanolShareAtBaseline;
  for (const change of changes) {
    const shift = hardwareShift(change, ethanolShare);
    if (!shift.ok) return shift;
    each.push(shift.value);
    if (change.kind === 'fuel' && change.amount !== null) ethanolShare = ratio(change.amount);
  }
  const total = each.reduce<BaselineShift>((sum, shift) => addShifts(sum, shift), { log: 0, sd: 0 });
  return ok({ each, total });
}
