import type { Air } from '@/lib/air/air';
import { airAt } from '@/lib/air/air-from';
import { standardPressure } from '@/lib/air/standard-atmosphere';
import type { Machine } from '@/lib/carb/machine';
import { type NeedleAdvice, needleFor } from '@/lib/carb/needle';
import { type PilotAdvice, pilotFor } from '@/lib/carb/pilot';
import type { PlanProblem, PlanWarning } from '@/lib/plan/types';
import { ok, type Result } from '@/lib/result/result';
import { type Kelvin, type Metre, type Ratio, ratio } from '@/lib/units/quantity';
import { planAt } from './ask-planner';
import { madeBox } from './made-box';
import { circuitNeed } from './season';

export type CardAxes = {
  /** Warmest first or coldest first, as the rider reads it. */
  readonly temperatures: readonly Kelvin[];
  readonly elevations: readonly Metre[];
  readonly relativeHumidity: Ratio;
};

/**
 * `borrow`: no jet owned is rich enough. `too-rich`: none is lean enough. `missing-size`: a size is made between the
 * ones owned, and would do.
 */
export type CardMark = 'borrow' | 'too-rich' | 'missing-size';

export type CardCell = {
  readonly temperature: Kelvin;
  readonly elevation: Metre;
  /** The planner's mains out of the box. */
  readonly mains: readonly number[];
  /** The planner's mains if every size that is made were owned; null where the box does not tell what is made. */
  readonly wanted: readonly number[] | null;
  readonly mark: CardMark | null;
  /** With `borrow` and `too-rich`: the smallest sizes that exist and would do. */
  readonly needed: readonly number[] | null;
  readonly chanceOfLean: Ratio;
  readonly pilot: PilotAdvice | null;
  readonly needle: NeedleAdvice | null;
};

export type JetCard = {
  readonly axes: CardAxes;
  /** By temperature, then by elevation. */
  readonly rows: readonly (readonly CardCell[])[];
};

/** The machine as the card asks about it: as it is, and with every size that is made in its box. */
export type AskedMachine = { readonly owned: Machine; readonly made: Machine | null };

export function askedFor(machine: Machine): AskedMachine {
  const owned = { ...machine, trim: null };
  const box = madeBox(machine);
  return { owned, made: box === null ? null : { ...owned, box } };
}

/**
 * One line of the card: mains for every pair of temperature and height, each as the planner answers when it is asked
 * about that air: the leanest jets of the box whose chance of being lean keeps the machine's limit, so every rounding is
 * to the rich side. Pressure is the standard atmosphere's, and its weather is in the chance; the trim stands at its
 * baseline. Line by line, so that a page does not stand still for all of it.
 */
export function cardRow(
  asked: AskedMachine,
  { elevations, relativeHumidity }: CardAxes,
  temperature: Kelvin,
): Result<readonly CardCell[], PlanProblem> {
  const row: CardCell[] = [];
  for (const elevation of elevations) {
    const cell = cardCell(asked, { temperature, elevation, relativeHumidity });
    if (!cell.ok) return cell;
    row.push(cell.value);
  }
  return ok(row);
}

type CellAir = {
  readonly temperature: Kelvin;
  readonly elevation: Metre;
  readonly relativeHumidity: Ratio;
};

/** The air of a cell: the standard atmosphere's pressure at the height, whatever the temperature. */
export function cardAir({ temperature, elevation, relativeHumidity }: CellAir): Air {
  const pressure = standardPressure(elevation);
  return airAt({ temperature, pressure, relativeHumidity, pressureFrom: 'standard' });
}

function cardCell({ owned, made }: AskedMachine, at: CellAir): Result<CardCell, PlanProblem> {
  const air = cardAir(at);
  const plan = planAt(owned, air, FREE);
  if (!plan.ok) return plan;
  const ideal = made === null ? null : planAt(made, air, FREE);
  const { setting, chanceOfLean } = plan.value.runs[0]!;
  const wanted = ideal?.ok === true ? ideal.value.runs[0]!.setting.mains : null;
  const lack = plan.value.warnings.find((each): each is BoxWarning => 'sizes' in each);
  const logNeed = circuitNeed(owned, air);
  return ok({
    temperature: at.temperature,
    elevation: at.elevation,
    mains: setting.mains,
    wanted,
    mark: lack === undefined ? missing(setting.mains, wanted) : MARKS[lack.code],
    needed: lack?.sizes ?? null,
    chanceOfLean,
    pilot: owned.pilot === null ? null : pilotFor(owned.pilot, logNeed),
    needle: owned.needle === null ? null : needleFor(owned.needle, logNeed, owned.limits.lean),
  });
}

/** A card knows no jets that are fitted, so a change costs nothing. */
const FREE = ratio(0);

type BoxWarning = Extract<PlanWarning, { readonly sizes: readonly number[] | null }>;

const MARKS = { 'no-jet-rich-enough': 'borrow', 'no-jet-lean-enough': 'too-rich' } as const;

function missing(mains: readonly number[], wanted: readonly number[] | null): CardMark | null {
  return wanted !== null && mains.some((main, i) => main !== wanted[i]) ? 'missing-size' : null;
}
